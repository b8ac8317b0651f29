// Words on the desk's pages. They wrap, and are never elided unless the page says so.
import QtQuick
import Bullace.Controls

Text {
    id: root

    property bool isSmall: false
    property bool isHead: false

    color: Theme.ink
    font.family: Theme.deskFamily
    font.bold: root.isHead
    font.pixelSize: root.isHead ? Theme.deskHeadPx : root.isSmall ? Theme.deskSmallPx : Theme.deskPx
    wrapMode: Text.WordWrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: root.text
}
