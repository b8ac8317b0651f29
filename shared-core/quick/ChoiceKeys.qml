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
        roomWidth: root.width
        roomHeight: root.height
        least: Qt.size(root.widest, root.tallest)
        gap: Theme.gap
    }
    property real widest: root.isPrimary ? Theme.keyWidth : Theme.secondary
    property real tallest: root.isPrimary ? Theme.keyHeight : Theme.secondary

    // The largest key says how large all are: a scale whose keys differ in size would weigh its own answers.
    function measure(): void {
        let wide = root.isPrimary ? Theme.keyWidth : Theme.secondary;
        let tall = root.isPrimary ? Theme.keyHeight : Theme.secondary;
        const keys = [];
        for (let i = 0; i < repeater.count; ++i) {
            const key = repeater.itemAt(i) as FieldKey;
            if (key !== null) {
                keys.push(key);
            }
        }
        keys.forEach((key) => { wide = Math.max(wide, key.implicitWidth); });
        keys.forEach((key) => { tall = Math.max(tall, key.heightAt(wide)); });
        root.widest = wide;
        root.tallest = tall;
    }

    implicitWidth: Theme.mm(100)
    implicitHeight: root.grid.compactHeight
    contentWidth: width
    contentHeight: root.grid.neededHeight
    interactive: contentHeight > height
    boundsBehavior: Flickable.StopAtBounds
    clip: interactive

    Connections {
        target: Theme
        function onChanged(): void {
            root.measure();
        }
    }
    Repeater {
        id: repeater
        model: root.model
        onItemAdded: root.measure()
        onItemRemoved: root.measure()
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
            isChoice: true
            x: root.grid.keyWidth > 0 ? root.grid.keyX(key.index) : 0
            y: root.grid.keyHeight > 0 ? root.grid.keyY(key.index) : 0
            width: root.grid.keyWidth
            height: root.grid.keyHeight
            onTapped: root.chosen(index)
            onImplicitWidthChanged: root.measure()
            onTextChanged: root.measure()
            onDetailChanged: root.measure()
        }
    }
}
