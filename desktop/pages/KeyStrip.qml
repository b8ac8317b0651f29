// What can be done on this page now, each with its key; what cannot is left out.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Desk

Flow {
    id: root

    required property DeskPage page

    spacing: Theme.mm(1.5)

    Repeater {
        model: root.page.actions
        DeskKey {
            id: key
            required property string actionId
            required property string label
            required property string keyName
            required property bool isEnabled
            required isChosen
            objectName: "action " + key.actionId
            visible: key.isEnabled
            enabled: key.isEnabled
            text: key.label
            keyText: key.keyName
            mostWidth: root.width
            onTapped: root.page.run(key.actionId)
        }
    }
}
