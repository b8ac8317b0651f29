// A page of words, a picture, and keys or letters: all pages but the one of a stop.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    required property bool isUpright
    readonly property SheetViewModel sheet: root.app.sheet
    readonly property bool isTyping: root.sheet !== null && root.sheet.typing !== SheetViewModel.Nothing
    readonly property int picture: root.sheet === null ? SheetViewModel.None : root.sheet.picture
    readonly property bool isLetters: root.isTyping && root.sheet.typing === SheetViewModel.Letters
    readonly property bool isAside: !root.isUpright && !root.isLetters && root.width > Theme.mm(120)
    readonly property real wordsWidth: root.isAside ? root.width * 0.42 : root.width
    readonly property real keysX: root.isAside && !Theme.isLeftHanded ? root.wordsWidth + 2 * Theme.gap : 0
    readonly property real wordsX: root.isAside && Theme.isLeftHanded ? root.width - root.wordsWidth : 0
    readonly property real keysTop: root.isAside ? 0 : Math.max(said.y + said.height, root.isFootAbove ? foot.height : 0) + Theme.gap
    // Letters need the height of a wide glass: there the way back stands beside the title.
    readonly property bool isFootAbove: root.isLetters && !root.isUpright
    readonly property real footY: root.isFootAbove ? root.height + Theme.gap : root.height - foot.height
    readonly property bool isKeyBeside: root.isLetters && keys.visible

    Column {
        id: said
        x: root.isFootAbove && Theme.isLeftHanded ? foot.width + Theme.gap : root.wordsX
        width: root.wordsWidth - (root.isFootAbove ? foot.width + Theme.gap : 0)
        spacing: Theme.gap

        FieldLabel {
            objectName: "title"
            room: root.height * (root.isAside ? 0.25 : root.isLetters ? 0.07 : 0.12)
            width: parent.width
            text: root.sheet === null ? "" : root.sheet.title
        }
        FieldLabel {
            objectName: "caution"
            room: root.height * (root.isAside ? 0.3 : 0.18)
            width: parent.width
            visible: text !== ""
            text: root.sheet === null ? "" : root.sheet.caution
        }
        FieldLabel {
            objectName: "words"
            room: root.height * (root.isAside ? 0.3 : root.isLetters ? 0.08 : 0.15)
            isSmall: true
            width: parent.width
            visible: text !== ""
            text: root.sheet === null ? "" : root.sheet.words
        }
        NoticeStripe {
            objectName: "stripe"
            width: parent.width
            visible: root.app.notice !== ""
            room: root.height * 0.15
            text: root.app.notice
        }
    }
    SheetPicture {
        id: shown
        app: root.app
        x: root.keysX
        y: root.keysTop
        width: root.width - (root.isAside ? root.wordsWidth + 2 * Theme.gap : 0)
        height: shown.visible ? Math.min(shown.wantedHeight, Math.max(0, root.footY - shown.y - 2 * Theme.gap - (keys.visible ? Math.max(Theme.keyHeight, keys.tallest) : 0))) : 0
    }
    EchoField {
        id: echo
        objectName: "echo"
        visible: root.isTyping
        isWords: root.isLetters
        room: root.isLetters ? root.height * 0.1 : Theme.mm(20)
        x: root.keysX
        y: root.keysTop
        width: shown.width - (root.isKeyBeside ? keys.width + Theme.gap : 0)
        text: root.sheet === null ? "" : root.sheet.typed
        emptyName: root.sheet === null ? "" : root.sheet.typedName
    }
    ChoiceKeys {
        id: keys
        objectName: "keys"
        visible: root.sheet !== null && root.sheet.choices.count > 0
        model: root.sheet === null ? null : root.sheet.choices
        x: root.keysX + (root.isKeyBeside ? echo.width + Theme.gap : 0)
        y: root.isKeyBeside ? root.keysTop : root.isTyping ? echo.y + echo.height + Theme.gap
                         : shown.visible ? shown.y + shown.height + Theme.gap : root.keysTop
        width: root.isLetters ? Math.max(keys.widest, root.width * 0.25) : shown.width
        height: !keys.visible ? 0 : root.isTyping ? keys.implicitHeight
              : root.picture === SheetViewModel.RowEnds ? Math.min(keys.implicitHeight, root.footY - keys.y - Theme.gap)
              : root.footY - keys.y - Theme.gap
        onChosen: (index) => root.sheet.choose(index)
    }
    LetterKeys {
        objectName: "letters"
        visible: root.isLetters
        x: root.keysX
        y: root.keysTop + Math.max(echo.height, keys.visible ? keys.height : 0) + Theme.gap
        width: shown.width
        height: root.footY - y - Theme.gap
        others: root.sheet === null ? "" : root.sheet.others
        onCharacter: (text) => root.sheet.character(text)
        onErase: root.sheet.erase()
        onDone: root.sheet.commit()
    }
    NumberKeys {
        objectName: "pad"
        visible: root.isTyping && !root.isLetters
        x: root.keysX
        y: echo.y + echo.height + Theme.gap
        width: shown.width
        height: Math.max(implicitHeight, root.footY - y - Theme.gap)
        hasNudge: false
        onDigit: (character) => root.sheet.character(character)
        onErase: root.sheet.erase()
        onNext: root.sheet.commit()
    }
    SheetKeys {
        id: foot
        app: root.app
        x: root.isFootAbove && !Theme.isLeftHanded ? root.width - width : 0
        y: root.isFootAbove ? 0 : root.footY
        width: root.isFootAbove ? Math.min(root.width * 0.3, Theme.keyWidth * 1.5) : root.width
    }
}
