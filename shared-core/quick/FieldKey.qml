// A key: its word, a smaller line below, and in a corner the hardware key that does the same. It grows until all its
// words are seen at full size; words larger than 100 % take what room there is.
import QtQuick
import Bullace.Controls

TouchKey {
    id: root

    property string text
    property string detail
    property string keyHint
    property string name: root.detail === "" ? root.text : root.text + ", " + root.detail
    property bool isChosen: false
    // Whether it is one of several answers, of which one may be chosen.
    property bool isChoice: false
    // The one key that goes on from here: drawn the other way round.
    property bool isStrong: false
    // A letter among many: 9 mm are enough, and its words take the whole key.
    property bool isSnug: false
    property bool isMarked: false
    // A primary key is 20 x 16 mm or what the layout asks for; a secondary one 14 mm.
    property bool isPrimary: true
    // The words' capitals are 4 mm; a number pad's digits take what the key gives.
    property int mostPx: Theme.labelPx
    // What its words may shrink to where a word is wider than the key; 2.9 mm are read at arm's length.
    property int leastPx: Theme.leastLabelPx

    readonly property real padding: (root.isSnug ? 0 : Theme.mm(1.2)) + Theme.frame
    readonly property real leastWidth: root.isSnug ? Theme.least : root.isPrimary ? Theme.keyWidth : Theme.secondary
    readonly property real leastHeight: root.isSnug ? Theme.least : root.isPrimary ? Theme.keyHeight : Theme.secondary
    readonly property bool hasHint: root.keyHint !== "" && Theme.showsHints
    readonly property real hintHeight: Math.max(root.hasHint ? hint.implicitHeight : 0, root.isMarked ? Theme.mm(4) : 0)
    readonly property real wordsWidth: Math.max(1, root.width - 2 * root.padding)
    readonly property real detailHeight: Theme.wrappedHeight(root.detail, detailLine.font.pixelSize, root.wordsWidth)
    // What the word leaves at 100 %.
    readonly property real detailRoom: root.height - 2 * root.padding - root.hintHeight
                                       - Theme.wrappedHeight(root.text, root.leastPx, root.wordsWidth)
    readonly property bool isInverted: root.enabled && (root.isChosen || root.isStrong) !== root.isDown

    reach: Theme.gap / 2
    // Drops lie on wet glass longer than they fall on it.
    dwellMs: Theme.layout === Theme.Rain ? 150 : 50
    implicitWidth: Math.max(root.leastWidth,
                            2 * root.padding + Math.max(Theme.widestWord(root.text, root.leastPx),
                                                        Theme.widestWord(root.detail, Theme.leastSmallPx),
                                                        (root.hasHint ? hint.implicitWidth : 0) + (root.isMarked ? Theme.mm(5) : 0)))
    implicitHeight: root.heightAt(root.width)

    // The height that all its words need at 100 %, in a key of this width.
    function heightAt(keyWidth: real): real {
        const room = Math.max(1, keyWidth - 2 * root.padding);
        return Math.max(root.leastHeight,
                        2 * root.padding + root.hintHeight + Theme.wrappedHeight(root.text, root.leastPx, room)
                        + Theme.wrappedHeight(root.detail, Theme.leastSmallPx, room));
    }

    Accessible.role: Accessible.Button
    Accessible.name: root.isMarked ? qsTr("%1, marked").arg(root.name) : root.name
    Accessible.focusable: true
    Accessible.checkable: root.isChoice
    Accessible.checked: root.isChosen
    Accessible.onPressAction: root.tap()

    Rectangle {
        id: ring
        visible: root.activeFocus
        anchors.fill: parent
        anchors.margins: -4
        color: "transparent"
        border.width: 3
        border.color: Theme.focus
        radius: Theme.mm(1) + 4
    }
    // A key that does nothing now keeps its full ink and loses its frame: grey is not seen in the sun.
    Rectangle {
        id: face
        visible: root.enabled
        anchors.fill: parent
        color: root.isInverted ? Theme.chosenFill : Theme.keyFill
        border.width: Theme.frame
        border.color: Theme.line
        radius: Theme.mm(1)
    }
    FieldSign {
        visible: root.isMarked
        sign: FieldSign.Marked
        ink: words.color
        x: root.padding
        y: root.padding
        width: Theme.mm(3.5)
        height: width
    }
    Text {
        id: hint
        visible: root.hasHint
        text: root.keyHint
        color: words.color
        font.family: Theme.family
        font.bold: true
        font.pixelSize: Theme.leastSmallPx
        anchors.right: parent.right
        anchors.top: parent.top
        anchors.margins: root.padding
        textFormat: Text.PlainText
        Accessible.ignored: true
    }
    Text {
        id: words
        text: root.text
        color: root.isInverted ? Theme.chosenInk : root.enabled ? Theme.keyInk : Theme.ink
        font.family: Theme.family
        font.bold: true
        font.pixelSize: Theme.fit(root.text, root.leastPx, root.mostPx, root.wordsWidth, height)
        x: root.padding
        y: root.padding + root.hintHeight
        width: root.wordsWidth
        height: root.height - 2 * root.padding - root.hintHeight - root.detailHeight
        horizontalAlignment: Text.AlignHCenter
        verticalAlignment: Text.AlignVCenter
        wrapMode: Text.WordWrap
        textFormat: Text.PlainText
        Accessible.ignored: true
    }
    Text {
        id: detailLine
        visible: root.detail !== ""
        text: root.detail
        color: words.color
        font.family: Theme.family
        font.bold: true
        font.pixelSize: Theme.fit(root.detail, Theme.leastSmallPx, Theme.smallPx, root.wordsWidth, root.detailRoom)
        x: root.padding
        width: root.wordsWidth
        height: root.detailHeight
        anchors.bottom: parent.bottom
        anchors.bottomMargin: root.padding
        horizontalAlignment: Text.AlignHCenter
        wrapMode: Text.WordWrap
        textFormat: Text.PlainText
        Accessible.ignored: true
    }
}
