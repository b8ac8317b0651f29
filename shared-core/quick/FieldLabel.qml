// Words on the page. They wrap, and are never elided.
import QtQuick
import Bullace.Controls

Text {
    id: root

    // Whether these are the small words (capitals of 2.9 mm) and not the usual ones (4 mm).
    property bool isSmall: false
    // The most height they may take, in pixels; 0: any. Larger text than 100 % gives way to it.
    property real room: 0
    readonly property int wantedPx: root.isSmall ? Theme.smallPx : Theme.labelPx

    color: Theme.ink
    font.family: Theme.family
    font.bold: true
    font.pixelSize: root.room <= 0 ? root.wantedPx
                                   : Theme.fit(root.text, root.isSmall ? Theme.leastSmallPx : Theme.leastLabelPx,
                                               root.wantedPx, root.width, root.room)
    wrapMode: Text.WordWrap
    textFormat: Text.PlainText
    Accessible.role: Accessible.StaticText
    Accessible.name: root.text
}
