// The answer to what is asked: keys of the whole scale, a number pad, letters, or the whole glass as one key that counts.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    readonly property StopViewModel stop: root.app.stop
    readonly property int panel: root.stop.panel
    readonly property bool isNumber: root.panel === StopViewModel.Number
    readonly property bool isLetters: root.panel === StopViewModel.Note || root.panel === StopViewModel.Words

    implicitWidth: pad.implicitWidth

    Flow {
        id: boxes
        visible: root.stop.boxes.length > 0 && root.isNumber
        width: root.width
        spacing: Theme.mm(1)
        Repeater {
            model: root.stop.boxes
            Rectangle {
                id: box
                required property string modelData
                width: Math.max(Theme.mm(9), boxText.implicitWidth + Theme.mm(2))
                height: boxText.implicitHeight + Theme.mm(1)
                color: Theme.paper
                border.width: Theme.frame
                border.color: Theme.line
                FieldLabel {
                    id: boxText
                    isSmall: true
                    anchors.centerIn: parent
                    text: box.modelData
                    Accessible.name: box.modelData === "" ? qsTr("A sample that is still to come") : box.modelData
                }
            }
        }
    }
    Row {
        id: echoRow
        visible: root.isNumber || root.isLetters
        y: boxes.visible ? boxes.height + Theme.gap : 0
        spacing: Theme.gap
        layoutDirection: Theme.isLeftHanded ? Qt.RightToLeft : Qt.LeftToRight
        EchoField {
            id: echo
            objectName: "echo"
            width: root.width - extra.width - (extra.width > 0 ? Theme.gap : 0)
            text: root.stop.typed
            unit: root.stop.unit
            refusal: root.stop.refusal
        }
        FieldKey {
            id: extra
            objectName: "extra"
            visible: root.stop.canTally || root.stop.canLeaveOut
            width: visible ? implicitWidth : 0
            isPrimary: false
            text: root.stop.canTally ? qsTr("Tally") : qsTr("Leave out")
            onTapped: root.stop.canTally ? root.stop.show(StopViewModel.Tally) : root.stop.leaveOut()
        }
    }
    NumberKeys {
        id: pad
        objectName: "pad"
        visible: root.isNumber
        y: echoRow.y + echoRow.height + Theme.gap
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
        visible: !root.isNumber && root.panel !== StopViewModel.Tally && root.panel !== StopViewModel.Unknown
        model: root.stop.choices
        y: root.isLetters ? echoRow.height + Theme.gap : 0
        width: root.width
        height: root.isLetters ? Math.min(keys.implicitHeight, Theme.keyHeight * Math.ceil(root.stop.choices.count / 2)) : root.height
        onChosen: (index) => root.stop.choose(index)
    }
    LetterKeys {
        objectName: "letters"
        visible: root.isLetters
        y: keys.y + (root.stop.choices.count > 0 ? keys.height + Theme.gap : 0)
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
        width: root.width
        text: qsTr("This is asked by a newer version and cannot be noted here. What is there of it is kept. Walk on.")
    }
    TallyGlass {
        visible: root.panel === StopViewModel.Tally
        anchors.fill: parent
        counted: root.stop.typed
        onCount: (by) => root.stop.tally(by)
        onDone: root.stop.commitTally()
    }
}
