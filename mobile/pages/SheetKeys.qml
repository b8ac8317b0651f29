// The keys at the foot of a sheet: back, undo, and the other pages.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Flow {
    id: root

    required property TabletApp app
    readonly property SheetViewModel sheet: root.app.sheet
    readonly property bool isTyping: root.sheet !== null && root.sheet.typing !== SheetViewModel.Nothing
    readonly property bool isHome: !root.isTyping && root.isFirst
    readonly property bool isFirst: root.app.page === TabletApp.Choose || root.app.page === TabletApp.RowEnd

    spacing: Theme.gap
    layoutDirection: Theme.isLeftHanded ? Qt.LeftToRight : Qt.RightToLeft

    FieldKey {
        objectName: "undo"
        visible: root.isHome
        text: qsTr("Undo")
        keyHint: "⌫"
        name: qsTr("Undo the last note")
        onTapped: root.app.undo()
    }
    FieldKey {
        objectName: "back"
        visible: root.sheet !== null && root.sheet.backText !== ""
        text: root.sheet === null ? "" : root.sheet.backText
        keyHint: "Esc"
        onTapped: root.sheet.back()
    }
    FieldKey {
        objectName: "waiting"
        visible: root.isHome
        text: root.app.waitingText
        name: qsTr("Sync: %1").arg(root.app.waitingText)
        onTapped: root.app.go(TabletApp.Sync)
    }
    FieldKey {
        objectName: "settings"
        visible: root.isHome
        text: qsTr("Tablet")
        name: qsTr("This tablet: hand, text, units")
        onTapped: root.app.go(TabletApp.Settings)
    }
    FieldKey {
        objectName: "leaveWalk"
        visible: root.app.page === TabletApp.RowEnd
        text: qsTr("Stop walking")
        onTapped: root.app.leaveWalk()
    }
    FieldLabel {
        isSmall: true
        visible: root.app.isDemo && root.isHome
        text: qsTr("Demo station: invented notes")
    }
}
