// The keys that are there at every stop: no vine, why there is no value, what stands beside, on to the next. On an upright
// glass Undo is the outermost of them.
pragma ComponentBehavior: Bound
import QtQuick
import Bullace.Controls
import Bullace.Tablet

Item {
    id: root

    required property TabletApp app
    required property bool hasUndo
    readonly property StopViewModel stop: root.app.stop
    // A small upright glass has no room for what a keyboard does besides the words.
    readonly property bool hasHints: !(root.hasUndo && Theme.isSmallGlass)
    readonly property int count: root.hasUndo ? 5 : 4
    readonly property real keyWidth: (root.width - (root.count - 1) * Theme.gap) / root.count
    readonly property real keyHeight: Math.max(walkOn.heightAt(root.keyWidth), noVine.heightAt(root.keyWidth),
                                               why.heightAt(root.keyWidth), beside.heightAt(root.keyWidth))

    implicitHeight: root.keyHeight

    component Foot: FieldKey {
        id: key
        // From the outer edge of the tapping hand.
        property int place
        readonly property int column: Theme.isLeftHanded ? key.place : root.count - 1 - key.place
        x: key.column * (root.keyWidth + Theme.gap)
        readonly property bool isTight: !root.hasHints || Theme.widestWord(key.text, Theme.leastLabelPx) > root.keyWidth - 2 * key.padding
        leastPx: key.isTight ? Theme.leastSmallPx : Theme.leastLabelPx
        width: root.keyWidth
        height: root.keyHeight
    }
    Foot {
        objectName: "undo"
        visible: root.hasUndo
        place: 0
        text: qsTr("Undo")
        keyHint: root.hasHints ? "⌫" : ""
        name: qsTr("Undo the last note")
        onTapped: root.app.undo()
    }
    Foot {
        id: walkOn
        objectName: "walkOn"
        place: root.count - 4
        text: root.stop.nextText
        keyHint: root.hasHints ? "⏎" : ""
        guardsRepeat: true
        onTapped: root.stop.walkOn()
    }
    Foot {
        id: noVine
        objectName: "noVine"
        place: root.count - 3
        text: qsTr("No vine")
        keyHint: root.hasHints ? "-" : ""
        onTapped: root.stop.noVine()
    }
    Foot {
        id: why
        objectName: "why"
        place: root.count - 2
        text: qsTr("None …")
        keyHint: root.hasHints ? "+" : ""
        name: qsTr("Why there is no value")
        isChosen: root.stop.panel === StopViewModel.Why
        onTapped: root.stop.panel === StopViewModel.Why ? root.stop.back() : root.stop.show(StopViewModel.Why)
    }
    Foot {
        id: beside
        objectName: "beside"
        place: root.count - 1
        text: qsTr("Also")
        keyHint: root.hasHints ? ":" : ""
        name: qsTr("Photo, note, bag, crosses, label")
        isChosen: root.stop.panel === StopViewModel.Beside
        onTapped: root.stop.panel === StopViewModel.Beside ? root.stop.back() : root.stop.show(StopViewModel.Beside)
    }
}
