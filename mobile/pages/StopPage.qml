// One stop. On a wide glass the answers stand in a column on the side of the tapping hand; on an upright one below.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    required property bool isUpright

    readonly property real padWidth: root.isUpright ? root.width : Math.max(answer.implicitWidth, Math.min(root.width * 0.55, root.width - Theme.mm(80)))
    readonly property real sideWidth: root.isUpright ? root.width : root.width - root.padWidth - 2 * Theme.gap
    readonly property real sideX: !root.isUpright && Theme.isLeftHanded ? root.padWidth + 2 * Theme.gap : 0
    readonly property real footY: root.height - foot.height

    StopHead {
        id: head
        app: root.app
        x: root.sideX
        width: root.sideWidth
    }
    StopStripe {
        id: stripe
        app: root.app
        x: root.sideX
        y: head.height + Theme.gap
        width: root.sideWidth
    }
    StopKeys {
        id: foot
        app: root.app
        isUpright: root.isUpright
        x: root.isUpright ? 0 : root.sideX
        y: root.footY
        width: root.sideWidth
    }
    StopAnswer {
        id: answer
        app: root.app
        x: root.isUpright || Theme.isLeftHanded ? 0 : root.width - root.padWidth
        y: root.isUpright ? stripe.y + stripe.height + Theme.gap : 0
        width: root.padWidth
        height: (root.isUpright ? root.footY : undoKey.y) - answer.y - Theme.undoDistance
    }
    // Where the pad is a column of its own, Undo stands below it at the outer edge of the tapping hand.
    FieldKey {
        id: undoKey
        objectName: "undo"
        visible: !root.isUpright
        text: qsTr("Undo")
        keyHint: "⌫"
        name: qsTr("Undo the last note")
        x: Theme.isLeftHanded ? 0 : root.width - width
        y: root.height - height
        onTapped: root.app.undo()
    }
}
