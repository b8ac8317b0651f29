// A line to type into.
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    property alias text: input.text
    property string name
    property string placeholder

    signal edited(string text)
    signal committed()
    signal dropped()
    // Tab, where somebody listens: what is typed is taken and the next one comes.
    signal passed()
    property bool takesTab: false

    implicitHeight: Math.max(Theme.mm(8.6), input.implicitHeight + 2 * Theme.mm(1.4))
    implicitWidth: Theme.mm(60)
    Accessible.role: Accessible.EditableText
    Accessible.name: root.name
    Accessible.focusable: true

    function takeAll(): void {
        input.forceActiveFocus();
        input.selectAll();
    }
    function takeEnd(): void {
        input.forceActiveFocus();
        input.deselect();
        input.cursorPosition = input.text.length;
    }

    Rectangle {
        anchors.fill: parent
        color: Theme.paper
        border.width: input.activeFocus ? 3 : Theme.frame
        border.color: input.activeFocus ? Theme.focus : Theme.line
        radius: Theme.mm(0.8)
    }
    DeskLabel {
        visible: input.text === "" && root.placeholder !== ""
        text: root.placeholder
        x: input.x
        anchors.verticalCenter: parent.verticalCenter
        wrapMode: Text.NoWrap
        elide: Text.ElideRight
        width: input.width
        font.italic: true
        Accessible.ignored: true
    }
    TextInput {
        id: input
        focus: true
        activeFocusOnTab: true
        clip: true
        x: Theme.mm(1.6)
        width: parent.width - 2 * x
        anchors.verticalCenter: parent.verticalCenter
        color: Theme.ink
        selectionColor: Theme.chosenFill
        selectedTextColor: Theme.chosenInk
        font.family: Theme.deskFamily
        font.pixelSize: Theme.deskPx
        selectByMouse: true
        Accessible.role: Accessible.EditableText
        Accessible.name: root.name
        onTextEdited: root.edited(input.text)
        Keys.onReturnPressed: root.committed()
        Keys.onEnterPressed: root.committed()
        Keys.onEscapePressed: root.dropped()
        Keys.onTabPressed: (event) => {
            event.accepted = root.takesTab;
            if (root.takesTab) {
                root.passed();
            }
        }
    }
}
