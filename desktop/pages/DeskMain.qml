// The window of the desk: pages on the left, the page, what can be done at its foot, help beside it where it is wanted.
import QtQuick
import Bullace.Controls
import Bullace.Desk

Window {
    id: root

    required property DeskApp app
    readonly property real margin: Theme.mm(2.5)

    width: 1366
    height: 768
    minimumWidth: 1024
    minimumHeight: 640
    visible: true
    color: Theme.paper
    title: root.app.stationText === "" ? qsTr("Bullace desk") : qsTr("%1: Bullace desk").arg(root.app.stationText)

    FocusScope {
        id: scope
        objectName: "desk"
        anchors.fill: parent
        focus: true
        Keys.onPressed: (event) => event.accepted = root.app.press(event.key, event.modifiers)

        PageRail {
            id: rail
            objectName: "rail"
            visible: root.app.isOpen
            app: root.app
            width: visible ? Math.round(Theme.mm(44) * Math.min(Theme.textScale, 1.7)) : 0
            height: parent.height
        }
        Item {
            id: main
            anchors.left: rail.right
            anchors.right: help.left
            anchors.top: parent.top
            anchors.bottom: parent.bottom
            anchors.margins: root.margin

            DeskField {
                id: searchLine
                objectName: "searchLine"
                visible: root.app.isOpen
                anchors.right: parent.right
                width: Math.min(parent.width * 0.36, Theme.mm(80) * Theme.textScale)
                name: qsTr("Search")
                placeholder: qsTr("Search, Ctrl+F")
                onEdited: (text) => root.app.search(text)
                onCommitted: page.forceActiveFocus()
                onDropped: page.forceActiveFocus()
                Keys.onDownPressed: page.forceActiveFocus()
            }
            DeskLabel {
                id: title
                objectName: "pageTitle"
                width: parent.width - (searchLine.visible ? searchLine.width + Theme.mm(3) : 0)
                isHead: true
                text: root.app.current.title
            }
            DeskLabel {
                id: words
                objectName: "pageWords"
                y: title.y + Math.max(title.implicitHeight, searchLine.visible ? searchLine.height : 0) + Theme.mm(0.8)
                width: parent.width
                text: root.app.current.words
            }
            // A page that is not on the screen is not drawn and takes no keys.
            FocusScope {
                id: page
                objectName: "pageBody"
                focus: true
                y: words.y + words.implicitHeight + Theme.mm(2)
                width: parent.width
                height: foot.y - y - Theme.mm(2)

                ListPage {
                    visible: !arrivals.visible && !conflicts.visible && !vine.visible && !bench.visible && !map.visible && !study.visible && !breeding.visible && !selection.visible
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.current
                }
                ArrivalsPage {
                    id: arrivals
                    visible: root.app.page === DeskApp.Arrivals
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.arrivals
                }
                ConflictPage {
                    id: conflicts
                    visible: root.app.page === DeskApp.Conflicts
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.conflicts
                }
                VinePage {
                    id: vine
                    visible: root.app.page === DeskApp.Vine
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.vine
                }
                BenchPage {
                    id: bench
                    visible: root.app.page === DeskApp.Bench
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.bench
                }
                MapPage {
                    id: map
                    visible: root.app.page === DeskApp.Map
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.map
                }
                StudyPage {
                    id: study
                    visible: root.app.page === DeskApp.Study
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.study
                }
                StudyPage {
                    id: breeding
                    visible: root.app.page === DeskApp.Breeding
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.breeding
                }
                SelectionPage {
                    id: selection
                    visible: root.app.page === DeskApp.Selection
                    enabled: visible
                    focus: visible
                    anchors.fill: parent
                    page: root.app.selection
                }
            }
            Column {
                id: foot
                width: parent.width
                anchors.bottom: parent.bottom
                spacing: Theme.mm(1.5)
                NoticeLine {
                    width: parent.width
                    text: root.app.notice
                    onDropped: root.app.putNoticeAway()
                }
                QuestionLine {
                    width: parent.width
                    page: root.app.current
                }
                KeyStrip {
                    objectName: "keyStrip"
                    width: parent.width
                    page: root.app.current
                }
            }
        }
        HelpPane {
            id: help
            objectName: "help"
            visible: root.app.isHelpShown
            width: visible ? Math.round(Math.min(parent.width * 0.34, Theme.mm(70) * Theme.textScale)) : 0
            anchors.right: parent.right
            height: parent.height
            text: root.app.current.help
        }
    }
    // A question that is over gives the keyboard back to the page.
    Connections {
        target: root.app.current
        function onAsking(): void {
            if (!root.app.current.isAsking) {
                page.forceActiveFocus();
            }
        }
    }
    Connections {
        target: root.app
        function onPageChanged(): void {
            if (root.app.page !== DeskApp.Search) {
                page.forceActiveFocus();
            }
        }
        function onSearchWanted(): void {
            searchLine.takeAll();
        }
        function onPaneWanted(): void {
            const from = root.activeFocusItem ? root.activeFocusItem : page;
            from.nextItemInFocusChain(true).forceActiveFocus(Qt.TabFocusReason);
        }
    }
}
