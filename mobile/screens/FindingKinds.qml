// What was found, on six keys; "Other" turns them over to the rest.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    property int kind: 0
    property bool others: false
    /// By the records' codes; 0 turns the page.
    readonly property list<int> first: [1, 2, 3, 4, 7, 0]
    readonly property list<int> second: [5, 6, 8, 9, 11, 10, 12, 14, 13, 0]
    readonly property list<string> names: [qsTr("Other"), qsTr("Split"), qsTr("Loose"), qsTr("Missing"), qsTr("Rust"), qsTr("Rust weeping"), qsTr("Bent"), qsTr("Knocked"), qsTr("Debris or scour"), qsTr("Spread"), qsTr("Outside the rule"), qsTr("Moves"), qsTr("Paint flaking"), qsTr("Something else"), qsTr("Will not close")]
    readonly property list<int> shown: others ? second : first
    readonly property int columns: others ? 4 : 3
    readonly property bool ofOthers: kind > 4 && kind !== 7  // not on the first page

    signal chosen(kind: int)

    onKindChanged: {
        if (pad.kind === 0)
            pad.others = false;
    }

    Grid {
        id: keys

        readonly property int lines: Math.ceil(pad.shown.length / columns)
        readonly property real keyHeight: (pad.height - spacing * (lines - 1)) / lines

        anchors.fill: parent
        columns: pad.columns
        spacing: Tokens.gap * 0.75

        Repeater {
            model: pad.shown

            OctagonKey {
                required property int modelData
                readonly property bool turns: modelData === 0
                readonly property bool here: turns ? pad.ofOthers && !pad.others : modelData === pad.kind

                objectName: turns ? "turnKinds" : "kind" + modelData
                width: (keys.width - keys.spacing * (keys.columns - 1)) / keys.columns
                height: keys.keyHeight
                look: here ? KeyFace.Chosen : KeyFace.Plain
                text: !turns ? pad.names[modelData] : pad.others ? qsTr("Back") : pad.ofOthers ? pad.names[pad.kind] : pad.names[0]
                textSize: pad.others ? Tokens.smallText : Tokens.labelText
                boldText: here
                onClicked: {
                    if (turns)
                        pad.others = !pad.others;
                    else
                        pad.chosen(modelData);
                }
            }
        }
    }
}
