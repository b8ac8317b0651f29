// A whole scale as keys: one for each row of the model, all of them visible where the room allows, in reading order. Where
// it does not, a last key turns to the next ones: nobody has to swipe. The model has the roles text, detail, keyHint,
// isChosen and name.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls

Item {
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

    readonly property bool fits: root.grid.neededHeight <= root.height + 1
    readonly property int rowsThatFit: Math.max(1, Math.floor((root.height + Theme.gap) / (root.grid.keyHeight + Theme.gap)))
    readonly property int perPage: root.fits ? repeater.count : Math.max(1, root.grid.columns * root.rowsThatFit - 1)
    property int first: 0

    implicitWidth: Theme.mm(100)
    implicitHeight: root.grid.compactHeight
    onPerPageChanged: root.first = 0

    Connections {
        target: Theme
        function onChanged(): void {
            root.measure();
        }
    }
    FieldKey {
        objectName: "moreChoices"
        visible: !root.fits
        text: qsTr("More")
        leastPx: Theme.leastSmallPx
        name: qsTr("More keys: %1 to %2 of %3 are shown").arg(root.first + 1)
                  .arg(Math.min(repeater.count, root.first + root.perPage)).arg(repeater.count)
        isPrimary: root.isPrimary
        x: root.grid.keyWidth > 0 ? root.grid.keyX(root.perPage) : 0
        y: root.grid.keyHeight > 0 ? root.grid.keyY(root.perPage) : 0
        width: root.grid.keyWidth
        height: root.grid.keyHeight
        onTapped: root.first = root.first + root.perPage < repeater.count ? root.first + root.perPage : 0
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
            readonly property int place: key.index - root.first
            visible: key.place >= 0 && key.place < root.perPage
            x: root.grid.keyWidth > 0 ? root.grid.keyX(Math.max(0, key.place)) : 0
            y: root.grid.keyHeight > 0 ? root.grid.keyY(Math.max(0, key.place)) : 0
            width: root.grid.keyWidth
            height: root.grid.keyHeight
            onTapped: root.chosen(index)
            onImplicitWidthChanged: root.measure()
            onTextChanged: root.measure()
            onDetailChanged: root.measure()
        }
    }
}
