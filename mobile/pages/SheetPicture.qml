// The picture of a sheet: a row with its ends, a bar to hold a ruler to, or what the camera sees.
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    readonly property SheetViewModel sheet: root.app.sheet
    readonly property int picture: root.sheet === null ? SheetViewModel.None : root.sheet.picture
    readonly property real wantedHeight: root.picture === SheetViewModel.RowEnds ? Math.max(row.implicitHeight, Theme.mm(45))
                                       : root.picture === SheetViewModel.Ruler ? Theme.mm(14)
                                       : root.picture === SheetViewModel.Code ? Theme.mm(50) : Theme.mm(400)

    visible: root.picture !== SheetViewModel.None

    RowPicture {
        id: row
        objectName: "rowEnds"
        visible: root.picture === SheetViewModel.RowEnds
        width: parent.width
        height: parent.height
        vineCount: root.sheet === null ? 0 : root.sheet.vineCount
        firstText: root.sheet === null ? "" : root.sheet.firstText
        lastText: root.sheet === null ? "" : root.sheet.lastText
        onFirstEnd: root.sheet.firstEnd()
        onLastEnd: root.sheet.lastEnd()
    }
    Rectangle {
        objectName: "ruler"
        visible: root.picture === SheetViewModel.Ruler
        y: Theme.mm(2)
        width: Theme.mm(50)
        height: Theme.mm(8)
        color: Theme.ink
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("A bar that is to be 50 mm long")
    }
    CodeItem {
        objectName: "code"
        visible: root.picture === SheetViewModel.Code
        anchors.fill: parent
        text: root.sheet === null ? "" : root.sheet.codeText
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("The label as a code: %1").arg(text)
    }
    PictureItem {
        objectName: "cameraView"
        visible: root.picture === SheetViewModel.CameraView
        anchors.fill: parent
        app: root.app
        Accessible.role: Accessible.Graphic
        Accessible.name: qsTr("What the camera sees")
    }
}
