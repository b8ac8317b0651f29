// One line of words, where there is something to say: what looks wrong, what was taken back. Walking on is an answer too.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    readonly property StopViewModel stop: root.app.stop
    // Why a press was not taken comes before what happened before it.
    readonly property string told: root.stop.refusal !== "" ? root.stop.refusal : root.app.notice

    implicitHeight: stripe.visible ? stripe.implicitHeight : 0

    NoticeStripe {
        id: stripe
        objectName: "stripe"
        visible: stripe.text !== ""
        width: root.width
        room: Theme.mm(18)
        text: root.told !== "" ? root.told : root.stop.mark
        sign: root.told !== "" ? FieldSign.Done : FieldSign.Marked
        firstText: root.told !== "" ? "" : root.stop.markFirst
        secondText: root.told !== "" ? "" : root.stop.markSecond
        onFirst: root.stop.acceptMark()
        onSecond: root.stop.answerMark()
    }
}
