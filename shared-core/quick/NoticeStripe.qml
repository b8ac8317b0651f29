// A line of words across the page, with a shape before them and up to two keys. It never blocks: walking on is always
// possible, and nothing waits for an answer.
import QtQuick
import Bullace.Controls

Rectangle {
    id: root

    property string text
    property int sign: FieldSign.Marked
    property string firstText
    property string secondText
    property real room: 0 // for its words, see FieldLabel

    signal first()
    signal second()

    readonly property bool hasKeys: root.firstText !== "" || root.secondText !== ""
    // Below the words where there is no room for a dozen letters beside the keys.
    readonly property bool isStacked: root.hasKeys && root.width - keys.width < Theme.mm(50) * Theme.textScale
    readonly property real wordsX: shape.x + shape.width + Theme.gap

    color: Theme.paper
    border.width: Theme.frame
    border.color: Theme.line
    implicitWidth: Theme.mm(100)
    implicitHeight: root.isStacked ? words.implicitHeight + keys.height + 3 * Theme.gap
                                   : Math.max(words.implicitHeight, root.hasKeys ? keys.height : 0) + 2 * Theme.gap
    Accessible.role: Accessible.AlertMessage
    Accessible.name: root.text

    FieldSign {
        id: shape
        sign: root.sign
        ink: Theme.ink
        x: Theme.gap
        y: words.y + (words.font.pixelSize * 1.2 - shape.height) / 2
        width: Theme.mm(5) * Theme.textScale
        height: shape.width
    }
    FieldLabel {
        id: words
        objectName: "noticeWords"
        room: root.room
        text: root.text
        x: root.wordsX
        y: root.isStacked ? Theme.gap : (root.height - words.implicitHeight) / 2
        width: root.width - root.wordsX - Theme.gap - (root.isStacked || !root.hasKeys ? 0 : keys.width + Theme.gap)
        Accessible.ignored: true
    }
    Row {
        id: keys
        visible: root.hasKeys
        spacing: Theme.gap
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        anchors.margins: Theme.gap
        FieldKey {
            objectName: "noticeFirst"
            visible: root.firstText !== ""
            text: root.firstText
            isPrimary: false
            onTapped: root.first()
        }
        FieldKey {
            objectName: "noticeSecond"
            visible: root.secondText !== ""
            text: root.secondText
            isPrimary: false
            onTapped: root.second()
        }
    }
}
