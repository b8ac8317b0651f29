// What is asked, and its answer: keys of the whole scale, a number pad, letters, or the whole glass as one key that counts.
// On a wide glass Undo stands in the outer upper corner, 8 mm from the digits.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    required property bool hasUndo
    readonly property StopViewModel stop: root.app.stop
    readonly property int panel: root.stop.panel
    readonly property bool isNumber: root.panel === StopViewModel.Number
    readonly property bool isLetters: root.panel === StopViewModel.Note || root.panel === StopViewModel.Words
    readonly property bool isTally: root.panel === StopViewModel.Tally
    // An upright glass is short of height: there the number stands beside the question.
    readonly property bool isBeside: root.isNumber && !root.hasUndo
    readonly property real askWidth: root.width - (root.hasUndo ? undo.width + Theme.undoDistance : 0)
    readonly property real askX: root.hasUndo && Theme.isLeftHanded ? undo.width + Theme.undoDistance : 0
    readonly property real questionHeight: question.height + (boxes.visible ? boxes.height : 0)
    readonly property real askHeight: !echo.visible ? question.height
                                    : root.isBeside ? Math.max(root.questionHeight, echo.height) : echo.y + echo.height
    readonly property real bodyY: root.hasUndo ? Math.max(root.askHeight + Theme.gap, undo.height + Theme.undoDistance)
                                               : root.askHeight + Theme.gap

    implicitWidth: pad.implicitWidth

    FieldKey {
        id: undo
        objectName: "undo"
        visible: root.hasUndo
        text: qsTr("Undo")
        keyHint: "⌫"
        name: qsTr("Undo the last note")
        x: Theme.isLeftHanded ? 0 : root.width - width
        onTapped: root.app.undo()
    }
    FieldLabel {
        id: question
        objectName: "question"
        isSmall: root.isBeside && Theme.isSmallGlass
        room: root.isBeside ? Theme.mm(!Theme.isSmallGlass ? 16 : boxes.visible ? 6 : 11) : Math.max(Theme.mm(8), (root.height - pad.implicitHeight) * 0.25)
        x: root.askX
        width: root.isBeside ? root.askWidth * (boxes.visible ? 0.5 : 0.4) : root.askWidth
        text: root.stop.progress === "" ? root.stop.question
                                        : qsTr("%1 (%2)").arg(root.stop.question).arg(root.stop.progress)
    }
    SampleBoxes {
        id: boxes
        visible: root.isNumber && root.stop.boxes.length > 0
        stop: root.stop
        x: root.askX
        y: question.height
        width: question.width
    }
    EchoField {
        id: echo
        objectName: "echo"
        visible: root.isNumber || root.isLetters
        isWords: root.isLetters
        room: root.isLetters ? root.height * 0.2 : Math.max(Theme.mm(Theme.isSmallGlass ? 13 : 16), root.height - pad.implicitHeight - root.questionHeight - Theme.mm(6))
        x: root.isBeside ? root.askX + question.width + Theme.gap : root.askX
        y: root.isBeside ? 0 : root.questionHeight
        width: root.isBeside ? root.askWidth - question.width - Theme.gap : root.askWidth
        text: root.stop.typed
        unit: root.stop.unit
    }
    NumberKeys {
        id: pad
        objectName: "pad"
        visible: root.isNumber
        y: root.bodyY
        width: root.width
        height: Math.max(pad.implicitHeight, root.height - pad.y)
        hasPoint: root.stop.hasPoint
        canCommit: root.stop.canCommit
        hasNudge: true
        onDigit: (character) => root.stop.digit(character)
        onPoint: root.stop.point()
        onErase: root.stop.erase()
        onNext: root.stop.next()
        onNudge: (by) => root.stop.nudge(by)
    }
    ChoiceKeys {
        id: keys
        objectName: "keys"
        visible: root.stop.choices.count > 0 && !root.isNumber && !root.isTally
        model: root.stop.choices
        y: root.bodyY
        width: root.width
        height: root.isLetters ? Math.min(keys.implicitHeight, Theme.keyHeight) : root.height - root.bodyY
        onChosen: (index) => root.stop.choose(index)
    }
    LetterKeys {
        objectName: "letters"
        visible: root.isLetters
        y: keys.visible ? keys.y + keys.height + Theme.gap : root.bodyY
        width: root.width
        height: root.height - y
        canCommit: root.stop.canCommit
        others: ".,-"
        onCharacter: (text) => root.stop.character(text)
        onErase: root.stop.erase()
        onDone: root.stop.next()
    }
    FieldLabel {
        visible: root.panel === StopViewModel.Unknown
        room: root.height - root.bodyY
        y: root.bodyY
        width: root.width
        text: qsTr("This is asked by a newer version and cannot be noted here. What is there of it is kept. Walk on.")
    }
    TallyGlass {
        visible: root.isTally
        y: root.bodyY
        width: root.width
        height: root.height - y
        counted: root.stop.typed
        onCount: (by) => root.stop.tally(by)
        onDone: root.stop.commitTally()
    }
}
