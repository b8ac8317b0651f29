// One line of words, where there is something to say: what looks wrong, what was taken back. Walking on is an answer too.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    readonly property StopViewModel stop: root.app.stop

    implicitHeight: stripe.visible ? stripe.implicitHeight : 0

    NoticeStripe {
        id: stripe
        objectName: "stripe"
        visible: stripe.text !== ""
        width: root.width
        text: root.app.notice !== "" ? root.app.notice : root.stop.mark
        sign: root.app.notice !== "" ? FieldSign.Done : FieldSign.Marked
        firstText: root.app.notice !== "" ? "" : root.stop.markFirst
        secondText: root.app.notice !== "" ? "" : root.stop.markSecond
        onFirst: root.stop.acceptMark()
        onSecond: root.stop.answerMark()
    }
}
