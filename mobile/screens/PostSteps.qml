// The foot of a post's pad: back, skip, undo, on. While nothing can be undone Skip takes that place too; no other key moves.
import QtQuick
import Kneerail.Ui

Item {
    id: steps

    property string before
    property string after
    property string undoes
    property bool writes: true
    property bool wide: false
    property bool leftHanded: false
    readonly property int columns: wide ? 4 : 2
    readonly property real keyWidth: (width - Tokens.gap * (columns - 1)) / columns
    readonly property real keyHeight: wide ? height : (height - Tokens.gap) / 2
    readonly property real lower: wide ? 0 : keyHeight + Tokens.gap

    signal backward
    signal skip
    signal undo
    signal forward

    /// Of a column counted from the side that is away from the thumb.
    function columnX(column: int, wide: real): real {
        const x = column * (keyWidth + Tokens.gap);
        return leftHanded ? width - x - wide : x;
    }

    OctagonKey {
        objectName: "back"
        x: steps.columnX(0, width)
        y: steps.lower
        width: steps.keyWidth
        height: steps.keyHeight
        text: steps.before
        textSize: Tokens.labelText
        secondLine: steps.before === "" ? "" : qsTr("back")
        enabled: steps.before !== ""
        onClicked: steps.backward()
    }

    OctagonKey {
        objectName: "skip"
        visible: steps.writes
        x: steps.columnX(steps.wide ? 1 : 0, width)
        width: steps.undoes === "" ? steps.keyWidth * 2 + Tokens.gap : steps.keyWidth
        height: steps.keyHeight
        text: qsTr("Skip, say why")
        textSize: Tokens.bodyText
        onClicked: steps.skip()
    }

    OctagonKey {
        objectName: "undo"
        visible: steps.writes && steps.undoes !== ""
        x: steps.columnX(steps.wide ? 2 : 1, width)
        width: steps.keyWidth
        height: steps.keyHeight
        text: qsTr("Undo")
        textSize: Tokens.labelText
        secondLine: steps.undoes
        onClicked: steps.undo()
    }

    OctagonKey {
        objectName: "on"
        x: steps.columnX(steps.columns - 1, width)
        y: steps.lower
        width: steps.keyWidth
        height: steps.keyHeight
        text: steps.after
        textSize: Tokens.labelText
        secondLine: steps.after === "" ? "" : qsTr("on, leave open")
        enabled: steps.after !== ""
        onClicked: steps.forward()
    }
}
