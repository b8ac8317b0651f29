// One stop. On a wide glass the answers stand in a column on the side of the tapping hand; on an upright one below.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    required property bool isUpright

    // A note is typed on the whole glass: forty letters need it.
    readonly property bool isTyping: root.app.stop.panel === StopViewModel.Note || root.app.stop.panel === StopViewModel.Words
    readonly property bool isWhole: root.isTyping
    // Keys stay where they are, whatever is said above them: on an upright glass words take the place of the wire where there
    // is no room for both.
    readonly property real stripeTop: (root.isUpright ? answer.y : foot.y) - Theme.gap - stripe.height
    readonly property real spare: Theme.isSmallGlass || Theme.layout !== Theme.Bare ? 0 : Theme.mm(18)
    readonly property real padWidth: root.isWhole ? root.width : root.isUpright ? root.width : Math.min(root.width * 0.6, Math.max(answer.implicitWidth, root.width - Theme.mm(96) * Theme.textScale))
    readonly property real sideWidth: root.isUpright || root.isWhole ? root.width : root.width - root.padWidth - 2 * Theme.gap
    readonly property real sideX: !root.isUpright && !root.isWhole && Theme.isLeftHanded ? root.padWidth + 2 * Theme.gap : 0

    StopHead {
        id: head
        visible: !root.isWhole
        covered: stripe.height > 0 ? Math.max(0, head.fullHeight - root.stripeTop) : 0
        app: root.app
        x: root.sideX
        width: root.sideWidth
    }
    StopStripe {
        id: stripe
        visible: !root.isWhole
        app: root.app
        x: root.sideX
        y: root.stripeTop
        width: root.sideWidth
    }
    StopKeys {
        id: foot
        visible: !root.isWhole
        app: root.app
        hasUndo: root.isUpright
        x: root.sideX
        y: root.height - height
        width: root.sideWidth
    }
    StopAnswer {
        id: answer
        app: root.app
        hasUndo: !root.isUpright || root.isWhole
        x: root.isUpright || root.isWhole || Theme.isLeftHanded ? 0 : root.width - root.padWidth
        y: root.isUpright && !root.isWhole ? head.fullHeight + root.spare + Theme.gap : 0
        width: root.padWidth
        height: (root.isUpright && !root.isWhole ? foot.y - Theme.undoDistance : root.height) - answer.y
    }
}
