// Where one stands: the position, who grows there, the wire with what was just noted, and what is asked.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    readonly property StopViewModel stop: root.app.stop

    implicitHeight: question.y + question.height

    FieldKey {
        id: waiting
        objectName: "waiting"
        text: root.app.waitingText
        name: qsTr("Sync: %1").arg(root.app.waitingText)
        isPrimary: false
        anchors.right: parent.right
        onTapped: root.app.go(TabletApp.Sync)
    }
    Text {
        id: place
        objectName: "place"
        text: root.stop.place
        color: Theme.ink
        font.family: Theme.family
        font.bold: true
        font.pixelSize: Theme.fit(root.stop.place, Theme.leastPlacePx, Theme.placePx, place.width, Theme.mm(30))
        width: root.width - waiting.width - Theme.gap
        textFormat: Text.PlainText
        Accessible.role: Accessible.StaticText
        Accessible.name: qsTr("You stand at %1").arg(root.stop.place)
    }
    FieldLabel {
        id: identity
        objectName: "identity"
        isSmall: true
        text: root.stop.identity
        y: place.height
        width: Math.max(1, root.width - waiting.width - Theme.gap)
    }
    FieldWire {
        id: wire
        objectName: "wire"
        vines: root.stop.wire
        direction: root.stop.direction
        side: root.stop.side
        hasFirstPost: root.stop.hasFirstPost
        hasLastPost: root.stop.hasLastPost
        y: Math.max(identity.y + identity.height, waiting.height) + Theme.gap
        width: root.width
        height: implicitHeight
        onVineTapped: (index) => root.stop.tapWire(index)
    }
    FieldLabel {
        id: history
        objectName: "history"
        isSmall: true
        visible: root.stop.history !== ""
        text: root.stop.history
        y: wire.y + wire.height + Theme.gap
        width: root.width
    }
    FieldLabel {
        id: question
        objectName: "question"
        text: root.stop.progress === "" ? root.stop.question
                                        : qsTr("%1 (%2)").arg(root.stop.question).arg(root.stop.progress)
        y: (history.visible ? history.y + history.height : wire.y + wire.height) + Theme.gap
        width: root.width
    }
}
