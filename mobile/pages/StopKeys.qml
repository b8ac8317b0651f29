// The keys that are there at every stop: no vine, why there is no value, what stands beside, on to the next.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Flow {
    id: root

    required property TabletApp app
    required property bool isUpright
    readonly property StopViewModel stop: root.app.stop

    spacing: Theme.gap
    layoutDirection: Theme.isLeftHanded ? Qt.LeftToRight : Qt.RightToLeft

    FieldKey {
        objectName: "undo"
        visible: root.isUpright
        text: qsTr("Undo")
        keyHint: "⌫"
        name: qsTr("Undo the last note")
        onTapped: root.app.undo()
    }
    FieldKey {
        objectName: "walkOn"
        text: root.stop.nextText
        guardsRepeat: true
        onTapped: root.stop.next()
    }
    FieldKey {
        objectName: "noVine"
        text: qsTr("No vine")
        keyHint: "-"
        onTapped: root.stop.noVine()
    }
    FieldKey {
        objectName: "why"
        text: qsTr("Why none")
        keyHint: "+"
        name: qsTr("Why there is no value")
        isChosen: root.stop.panel === StopViewModel.Why
        onTapped: root.stop.panel === StopViewModel.Why ? root.stop.back() : root.stop.show(StopViewModel.Why)
    }
    FieldKey {
        objectName: "beside"
        text: qsTr("Beside")
        name: qsTr("Photo, note, bag, crosses, label")
        isChosen: root.stop.panel === StopViewModel.Beside
        onTapped: root.stop.panel === StopViewModel.Beside ? root.stop.back() : root.stop.show(StopViewModel.Beside)
    }
}
