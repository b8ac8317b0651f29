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
    readonly property bool isAside: !root.isUpright && root.width > Theme.mm(120) * Theme.textScale
    readonly property real wordsWidth: root.isAside ? root.width * 0.42 : root.width
    readonly property real keysX: root.isAside && !Theme.isLeftHanded ? root.wordsWidth + 2 * Theme.gap : 0
    readonly property real wordsX: root.isAside && Theme.isLeftHanded ? root.width - root.wordsWidth : 0
    readonly property real keysTop: root.isAside ? 0 : said.y + said.height + Theme.gap
    readonly property real footY: root.height - foot.height

    Column {
        id: said
        x: root.wordsX
        width: root.wordsWidth
        spacing: Theme.gap

        FieldLabel {
            objectName: "title"
            width: parent.width
            text: root.sheet === null ? "" : root.sheet.title
        }
        FieldLabel {
            objectName: "caution"
            width: parent.width
            visible: text !== ""
            text: root.sheet === null ? "" : root.sheet.caution
        }
        FieldLabel {
            objectName: "words"
            isSmall: true
            width: parent.width
            visible: text !== ""
            text: root.sheet === null ? "" : root.sheet.words
        }
        NoticeStripe {
            objectName: "stripe"
            width: parent.width
            visible: root.app.notice !== ""
            text: root.app.notice
        }
    }
    SheetPicture {
        id: shown
        app: root.app
        x: root.keysX
        y: root.keysTop
        width: root.width - (root.isAside ? root.wordsWidth + 2 * Theme.gap : 0)
        height: shown.visible ? Math.min(shown.wantedHeight, Math.max(0, root.footY - shown.y - Theme.gap)) : 0
    }
    EchoField {
        id: echo
        objectName: "echo"
        visible: root.isTyping
        x: root.keysX
        y: root.keysTop
        width: shown.width
        text: root.sheet === null ? "" : root.sheet.typed
        emptyName: root.sheet === null ? "" : root.sheet.typedName
    }
    ChoiceKeys {
        id: keys
        objectName: "keys"
        visible: root.sheet !== null && root.sheet.choices.count > 0
        model: root.sheet === null ? null : root.sheet.choices
        x: root.keysX
        y: root.isTyping ? echo.y + echo.height + Theme.gap
                         : shown.visible ? shown.y + shown.height + Theme.gap : root.keysTop
        width: shown.width
        height: !keys.visible ? 0 : root.isTyping ? keys.implicitHeight : root.footY - keys.y - Theme.gap
        onChosen: (index) => root.sheet.choose(index)
    }
    LetterKeys {
        objectName: "letters"
        visible: root.isTyping && root.sheet.typing === SheetViewModel.Letters
        x: root.keysX
        y: keys.y + (keys.visible ? keys.height + Theme.gap : 0)
        width: shown.width
        height: root.footY - y - Theme.gap
        others: root.sheet === null ? "" : root.sheet.others
        onCharacter: (text) => root.sheet.character(text)
        onErase: root.sheet.erase()
        onDone: root.sheet.commit()
    }
    NumberKeys {
        objectName: "pad"
        visible: root.isTyping && root.sheet.typing === SheetViewModel.Digits
        x: root.keysX
        y: keys.y + (keys.visible ? keys.height + Theme.gap : 0)
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
        y: root.footY
        width: root.width
    }
}
