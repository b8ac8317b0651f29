// A table: arrows move through it, Enter or a double click opens a line, F2 or a digit types into a cell that takes it.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Desk

FocusScope {
    id: root

    required property GridModel model
    property bool hasHeader: true
    // Facts beside a page: nothing in them is chosen.
    property bool isPlain: false
    // A grid to type into: Enter types, and what is typed leads to the cell below or beside.
    property bool isForTyping: false
    property int currentColumn: 0

    signal opened(int row)
    signal typed(int row, int column, string text)

    readonly property real pad: Theme.mm(1.2)
    readonly property real letter: letterWidth.advanceWidth
    readonly property real lineHeight: Math.ceil(metrics.height + 2 * root.pad * 0.8)
    property int layoutCount: 0
    property int renewals: 0 // of the rows' words
    property bool isTyping: false

    // Of its own letters and, but for a grid to type into, of its head.
    function ownWidth(column: int): real {
        const words = root.model.columnLetters(column) * root.letter;
        const head = root.hasHeader && !root.isForTyping ? headMetrics.advanceWidth(root.model.columnTitle(column)) + 2 : 0;
        return Math.ceil(Math.max(words, head) + 2 * root.pad);
    }
    // The column that takes the rest gets what the others leave, and at least its own width.
    function columnWidth(column: int): real {
        const own = root.ownWidth(column);
        if (!root.model.columnTakesRest(column)) {
            return own;
        }
        let others = 0;
        for (let i = 0; i < root.model.columnCount(); ++i) {
            others += i === column ? 0 : root.ownWidth(i);
        }
        return Math.max(own, root.width - others);
    }
    function move(by: int): void {
        root.model.current = root.model.next(root.model.current, by);
    }
    function isEditable(): bool {
        return root.model.data(root.model.index(root.model.current, root.currentColumn), GridModel.IsEditableRole) === true;
    }
    // With all of the cell's own text, or going on behind the first key.
    function beginTyping(text: string, isFirstKey: bool): void {
        if (!root.isEditable()) {
            return;
        }
        root.isTyping = true;
        editor.begin(text, isFirstKey);
    }
    function takeTyped(by: int, columns: int): void {
        root.endTyping();
        root.typed(root.model.current, root.currentColumn, editor.text);
        if (root.isForTyping) {
            root.move(by);
            root.currentColumn = Math.min(root.model.columnCount() - 1, root.currentColumn + columns);
        }
    }
    // The keyboard goes back to the table: its hidden line would keep it otherwise.
    function endTyping(): void {
        root.isTyping = false;
        editor.focus = false;
        root.forceActiveFocus();
    }
    function enter(): void {
        if (root.isForTyping && root.isEditable()) {
            root.beginTyping(root.model.textAt(root.model.current, root.currentColumn), false);
        } else {
            root.opened(root.model.current);
        }
    }

    Accessible.role: Accessible.Table
    Accessible.name: root.model.name
    Accessible.focusable: !root.isPlain
    activeFocusOnTab: !root.isPlain
    onActiveFocusChanged: if (root.activeFocus && root.model.current < 0) root.move(1)

    Keys.onUpPressed: root.move(-1)
    Keys.onDownPressed: root.move(1)
    Keys.onLeftPressed: root.currentColumn = Math.max(0, root.currentColumn - 1)
    Keys.onRightPressed: root.currentColumn = Math.min(root.model.columnCount() - 1, root.currentColumn + 1)
    Keys.onReturnPressed: root.enter()
    Keys.onEnterPressed: root.enter()
    Keys.onPressed: (event) => {
        event.accepted = false;
        if (event.key === Qt.Key_Home || event.key === Qt.Key_End) {
            root.model.current = event.key === Qt.Key_Home ? root.model.next(-1, 1) : root.model.next(root.model.count, -1);
            event.accepted = true;
        } else if (event.key === Qt.Key_F2) {
            root.beginTyping(root.model.textAt(root.model.current, root.currentColumn), false);
            event.accepted = true;
        } else if (root.isForTyping && root.isEditable() && /^[0-9.,\-\u2212]$/.test(event.text)) {
            root.beginTyping(event.text, true);
            event.accepted = true;
        }
    }

    // Told anew when the letters grow, as a call of metrics is not.
    TextMetrics {
        id: letterWidth
        font: metrics.font
        text: "n"
    }
    FontMetrics {
        id: headMetrics
        font.family: Theme.deskFamily
        font.pixelSize: Theme.deskPx
        font.bold: true
    }
    FontMetrics {
        id: metrics
        font.family: Theme.deskFamily
        font.pixelSize: Theme.deskPx
    }
    Connections {
        target: root.model
        function onColumnsReset(): void {
            root.layoutCount += 1;
            root.currentColumn = 0;
            view.forceLayout();
        }
        function onDataChanged(): void {
            root.renewals += 1;
        }
        function onCurrentChanged(): void {
            root.renewals += 1;
            if (root.model.current >= 0) {
                view.positionViewAtRow(root.model.current, TableView.Contain);
            }
        }
    }
    onCurrentColumnChanged: if (root.model.columnCount() > root.currentColumn) view.positionViewAtColumn(root.currentColumn, TableView.Contain)
    onWidthChanged: view.forceLayout()
    onLetterChanged: view.forceLayout()

    Item {
        id: header
        visible: root.hasHeader
        clip: true
        width: parent.width
        height: visible ? root.lineHeight : 0
        Row {
            x: -view.contentX
            Repeater {
                model: root.layoutCount >= 0 ? root.model.columnCount() : 0
                DeskLabel {
                    id: title
                    // What a narrow head cuts short is said below with the cell.
                    objectName: root.isForTyping ? "cellWords" : ""
                    required property int index
                    width: root.width >= 0 && root.layoutCount >= 0 ? root.columnWidth(title.index) : 0
                    height: root.lineHeight
                    leftPadding: root.pad
                    rightPadding: root.pad
                    verticalAlignment: Text.AlignVCenter
                    horizontalAlignment: root.layoutCount >= 0 && root.model.columnIsNumber(title.index) ? Text.AlignRight : Text.AlignLeft
                    text: root.layoutCount >= 0 ? root.model.columnTitle(title.index) : ""
                    font.bold: true
                    wrapMode: Text.NoWrap
                    elide: Text.ElideRight
                }
            }
        }
    }
    Rectangle {
        visible: root.hasHeader
        y: header.height
        width: parent.width
        height: Theme.frame
        color: Theme.line
    }
    TableView {
        id: view
        objectName: "tableView"
        clip: true
        y: header.height + (root.hasHeader ? Theme.frame : 0)
        width: parent.width
        height: parent.height - y - (whole.visible ? whole.height : 0)
        model: root.model
        boundsBehavior: Flickable.StopAtBounds
        reuseItems: true
        columnWidthProvider: root.columnWidth
        rowHeightProvider: (row) => root.lineHeight
        interactive: true

        delegate: Item {
            id: cell
            required property int row
            required property int column
            required property string text
            required property int sign
            required property bool isHeading
            required property bool isStrong
            required property bool isNumber
            required property bool isEditable
            required property string spoken
            readonly property bool isCurrent: !root.isPlain && cell.row === root.model.current && !cell.isHeading
            readonly property bool isHere: cell.isCurrent && root.activeFocus && cell.column === root.currentColumn

            // A heading's words go on over the columns behind it.
            z: cell.isHeading && cell.column === 0 ? 2 : 1
            Accessible.role: Accessible.Cell
            Accessible.name: cell.spoken

            Rectangle {
                anchors.fill: parent
                color: cell.isCurrent ? Theme.chosenFill : Theme.paper
                visible: cell.isCurrent
            }
            Rectangle {
                visible: cell.isEditable && !cell.isCurrent
                anchors.fill: parent
                color: "transparent"
                border.width: 1
                border.color: Theme.line
            }
            Rectangle {
                visible: cell.isHere && root.model.columnCount() > 1
                anchors.fill: parent
                color: "transparent"
                border.width: 3
                border.color: Theme.focus
            }
            Rectangle {
                visible: cell.isHeading
                width: cell.width
                height: 1
                color: Theme.line
                anchors.bottom: parent.bottom
            }
            FieldSign {
                id: shape
                visible: cell.sign >= 0
                sign: Math.max(0, cell.sign)
                ink: label.color
                x: root.pad
                width: metrics.height * 0.62
                height: width
                anchors.verticalCenter: parent.verticalCenter
            }
            DeskLabel {
                id: label
                objectName: "cellWords"
                x: cell.sign >= 0 ? shape.x + shape.width : 0
                width: cell.isHeading && cell.column === 0 ? root.width : cell.width - x
                height: cell.height
                leftPadding: root.pad
                rightPadding: root.pad
                visible: !cell.isHeading || cell.column === 0
                text: cell.text
                color: cell.isCurrent ? Theme.chosenInk : Theme.ink
                font.bold: cell.isStrong
                verticalAlignment: Text.AlignVCenter
                horizontalAlignment: cell.isNumber && !cell.isHeading ? Text.AlignRight : Text.AlignLeft
                wrapMode: Text.NoWrap
                elide: Text.ElideRight
                Accessible.ignored: true
            }
            MouseArea {
                anchors.fill: parent
                enabled: !root.isPlain
                onClicked: {
                    root.forceActiveFocus();
                    root.currentColumn = cell.column;
                    root.model.current = cell.row;
                }
                onDoubleClicked: root.enter()
            }
        }
    }
    // What its cell cuts short is said in full below.
    DeskLabel {
        id: whole
        objectName: "wholeCell"
        readonly property string said: {
            if (root.renewals < 0 || root.model.current < 0) {
                return "";
            }
            return root.isForTyping ? root.model.data(root.model.index(root.model.current, root.currentColumn), GridModel.SpokenRole)
                                    : root.model.textAt(root.model.current, root.currentColumn);
        }
        visible: !root.isPlain && whole.said !== ""
                 && (root.isForTyping || metrics.advanceWidth(whole.said) * 1.15 + 2 * root.pad > root.columnWidth(root.currentColumn))
        text: whole.said
        width: parent.width
        topPadding: Theme.mm(1)
        anchors.bottom: parent.bottom
    }
    DeskField {
        id: editor
        visible: root.isTyping
        name: root.model.columnTitle(root.currentColumn)
        takesTab: root.isForTyping
        width: root.columnWidth(root.currentColumn)
        height: root.lineHeight + 4
        function begin(text: string, isFirstKey: bool): void {
            editor.text = text;
            editor.takeAll();
            if (isFirstKey) {
                editor.takeEnd();
            }
        }
        onCommitted: root.takeTyped(1, 0)
        onPassed: root.takeTyped(0, 1)
        onDropped: root.endTyping()
        y: view.y + Math.min(Math.max(0, root.model.current * root.lineHeight - view.contentY), view.height - height)
        x: {
            let left = -view.contentX;
            for (let i = 0; i < root.currentColumn; ++i) {
                left += root.columnWidth(i);
            }
            return Math.max(0, left);
        }
    }
}
