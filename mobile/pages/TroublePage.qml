// The one message that blocks: what is wrong, what is safe, what to do.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app

    Column {
        width: root.width
        spacing: Theme.gap
        FieldSign {
            sign: FieldSign.Marked
            ink: Theme.ink
            width: Theme.mm(12)
            height: width
        }
        FieldLabel {
            objectName: "trouble"
            width: parent.width
            text: root.app.trouble
            Accessible.role: Accessible.AlertMessage
        }
        FieldKey {
            objectName: "tryAgain"
            text: qsTr("Try again")
            keyHint: "⏎"
            onTapped: root.app.tryAgain()
        }
    }
}
