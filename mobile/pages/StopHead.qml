// Where one stands: the position, who grows there, and the wire with what was just noted. While something beside is
// looked for, what the camera sees lies over the wire, so that a photo is one tap more.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    // Height that something else takes from below: the wire gives way to it, then who grows here.
    property real covered: 0
    readonly property real fullHeight: root.stop.history !== "" ? history.y + history.height : wire.y + wire.height
    readonly property StopViewModel stop: root.app.stop
    readonly property bool isLooking: root.stop.panel === StopViewModel.Beside && root.app.hasPicture && root.covered <= 0

    implicitHeight: root.fullHeight

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
        font.pixelSize: Theme.fit(root.stop.place, Theme.leastPlacePx, Theme.placePx, place.width, Theme.mm(Theme.isSmallGlass ? 12 : 20))
        width: root.width - waiting.width - Theme.gap
        lineHeightMode: Text.FixedHeight
        lineHeight: place.font.pixelSize
        textFormat: Text.PlainText
        Accessible.role: Accessible.StaticText
        Accessible.name: qsTr("You stand at %1").arg(root.stop.place)
    }
    FieldLabel {
        id: identity
        objectName: "identity"
        isSmall: true
        room: Theme.mm(Theme.isSmallGlass ? 6 : 12)
        visible: root.covered <= root.fullHeight - identity.y - identity.height
        text: root.stop.identity
        y: place.height
        width: Math.max(1, root.width - waiting.width - Theme.gap)
    }
    FieldWire {
        id: wire
        objectName: "wire"
        visible: root.covered <= 0 && !root.isLooking
        vines: root.stop.wire
        direction: root.stop.direction
        side: root.stop.side
        hasFirstPost: root.stop.hasFirstPost
        hasLastPost: root.stop.hasLastPost
        y: Math.max(identity.y + identity.height, waiting.height) + Theme.gap
        width: root.width
        // It grows with the longest words that hung there, and never shrinks: the keys below stay where they are.
        onImplicitHeightChanged: wire.height = Math.max(wire.height, wire.implicitHeight)
        onWidthChanged: wire.height = wire.implicitHeight
        onVineTapped: (index) => root.stop.tapWire(index)
    }
    PictureItem {
        objectName: "besideView"
        visible: root.isLooking
        app: root.app
        y: wire.y
        width: root.width
        height: wire.height
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("What the camera sees")
    }
    FieldLabel {
        id: history
        objectName: "history"
        isSmall: true
        visible: root.stop.history !== "" && root.covered <= 0
        text: root.stop.history
        y: wire.y + wire.height + Theme.gap
        width: root.width
    }
}
