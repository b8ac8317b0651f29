// The window of the tablet: the page that is on the glass, and the keys of a keyboard for all of them.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Window {
    id: root

    required property TabletApp app
    readonly property bool isUpright: root.height > root.width

    visible: true
    color: Theme.paper
    title: qsTr("Bullace tablet")

    GlassGuard {
        id: guard
        window: root
    }
    FocusScope {
        id: scope
        objectName: "pages"
        anchors.fill: parent
        focus: true
        Keys.onPressed: (event) => {
            Theme.showsHints = true;
            event.accepted = root.app.press(event.key, event.text);
        }

        // A page that is not on the glass is not drawn; all of them read the same journal.
        Item {
            anchors.fill: parent
            anchors.margins: Theme.edge

            StopPage {
                visible: root.app.page === TabletApp.Stop
                anchors.fill: parent
                app: root.app
                isUpright: root.isUpright
            }
            SheetPage {
                visible: root.app.sheet !== null
                anchors.fill: parent
                app: root.app
                isUpright: root.isUpright
            }
            PhotoPage {
                visible: root.app.page === TabletApp.Photo
                anchors.fill: parent
                app: root.app
            }
            TroublePage {
                visible: root.app.page === TabletApp.Trouble
                anchors.fill: parent
                app: root.app
            }
        }
        NoticeStripe {
            objectName: "glassHeld"
            visible: guard.isHeld
            width: parent.width
            anchors.bottom: parent.bottom
            text: qsTr("Three or more touches: waiting until the glass is clear")
        }
    }
    Connections {
        target: root.app
        function onPageChanged(): void {
            scope.forceActiveFocus();
        }
    }
}
