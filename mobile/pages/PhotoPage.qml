// What the camera sees, and the key that keeps it; then it returns by itself.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app

    PictureItem {
        objectName: "cameraView"
        width: root.width
        height: root.height - foot.height - Theme.gap
        app: root.app
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("What the camera sees")
    }
    FieldLabel {
        objectName: "cameraWords"
        visible: !root.app.hasPicture || root.app.notice !== ""
        width: root.width
        text: root.app.notice !== "" ? root.app.notice : qsTr("The camera is starting …")
    }
    Row {
        id: foot
        anchors.bottom: parent.bottom
        anchors.right: Theme.isLeftHanded ? undefined : parent.right
        spacing: Theme.gap
        FieldKey {
            objectName: "leavePhoto"
            text: qsTr("Back")
            keyHint: "Esc"
            onTapped: root.app.leavePhoto()
        }
        FieldKey {
            objectName: "takePhoto"
            text: qsTr("Keep it")
            keyHint: "*"
            name: qsTr("Keep this picture")
            isStrong: true
            enabled: root.app.hasPicture
            guardsRepeat: true
            onTapped: root.app.takePhoto()
        }
    }
}
