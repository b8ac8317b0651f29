// A whole scale as keys: one for each row of the model, all of them visible where the room allows, in reading order. The
// model has the roles text, detail, keyHint, isChosen and name.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls

Flickable {
    id: root

    required property QtObject model
    property bool isPrimary: true

    signal chosen(int index)

    readonly property KeyGrid grid: KeyGrid {
        count: repeater.count
        room: Qt.size(root.width, root.height)
        least: Qt.size(root.widest, root.tallest)
        gap: Theme.gap
    }
    property real widest: root.isPrimary ? Theme.keyWidth : Theme.secondary
    property real tallest: root.isPrimary ? Theme.keyHeight : Theme.secondary

    // The largest key says how large all are: a scale whose keys differ in size would weigh its own answers.
    function measure(): void {
        let wide = root.isPrimary ? Theme.keyWidth : Theme.secondary;
        let tall = root.isPrimary ? Theme.keyHeight : Theme.secondary;
        for (let i = 0; i < repeater.count; ++i) {
            const key = repeater.itemAt(i) as FieldKey;
            wide = Math.max(wide, key ? key.implicitWidth : 0);
            tall = Math.max(tall, key ? key.implicitHeight : 0);
        }
        root.widest = wide;
        root.tallest = tall;
    }

    implicitWidth: Theme.mm(100)
    implicitHeight: root.grid.neededHeight
    contentWidth: width
    contentHeight: root.grid.neededHeight
    interactive: contentHeight > height
    boundsBehavior: Flickable.StopAtBounds
    clip: interactive

    Repeater {
        id: repeater
        model: root.model
        onCountChanged: root.measure()
        FieldKey {
            id: key
            required property int index
            required text
            required detail
            required keyHint
            required isChosen
            required name
            objectName: "choice" + index
            isPrimary: root.isPrimary
            x: root.grid.keyX(index)
            y: root.grid.keyY(index)
            width: root.grid.keyWidth
            height: root.grid.keyHeight
            onTapped: root.chosen(index)
            onImplicitWidthChanged: root.measure()
            onImplicitHeightChanged: root.measure()
        }
    }
}
