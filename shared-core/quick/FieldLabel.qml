// Words on the page. They wrap, and are never elided.
import QtQuick
import Bullace.Controls

Text {
    id: root

    // Whether these are the small words (capitals of 2.9 mm) and not the usual ones (4 mm).
    property bool isSmall: false

    color: Theme.ink
    font.family: Theme.family
    font.bold: true
    font.pixelSize: root.isSmall ? Theme.smallPx : Theme.labelPx
    wrapMode: Text.WordWrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: root.text
}
