// The Bay pad: push the rail, measure where it looks worst, and of a gate whether it shuts. Upright the push stands beside the rest.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: pad

    required property WalkModel walk
    property bool wide: false
    property bool leftHanded: Tokens.leftHanded
    readonly property BayCheck bay: walk.bay
    readonly property bool typing: bay.measuring >= 0
    readonly property real column: wide ? (width - Tokens.margin) / 2 : width
    readonly property real keysX: wide && !leftHanded ? column + Tokens.margin : 0
    readonly property real besideX: wide && leftHanded ? column + Tokens.margin : 0
    readonly property real rowHeight: Tokens.padChoiceHeight

    Item {
        id: pushing

        visible: pad.walk.writable && !pad.typing
        x: pad.keysX
        width: pad.column
        height: pad.wide ? pad.height : measuring.y - Tokens.inset

        InkText {
            id: heading

            width: parent.width
            text: qsTr("Push the rail, as a person leaning would")
            bold: true
            fontSizeMode: Text.HorizontalFit
            minimumPixelSize: Tokens.smallText
        }

        Grid {
            id: felts

            readonly property bool narrow: pad.bay.gate && !pad.wide
            readonly property real room: pad.bay.gate ? (parent.height - y - Tokens.gap) * (narrow ? 0.34 : 0.5) : parent.height - y

            y: heading.height + Tokens.gap
            columns: narrow ? 3 : 1
            spacing: Tokens.gap

            Repeater {
                model: 3

                FeltKey {
                    required property int index

                    objectName: "felt" + (index + 1)
                    width: (pad.column - felts.spacing * (felts.columns - 1)) / felts.columns
                    height: felts.narrow ? felts.room : (felts.room - felts.spacing * 2) / 3
                    look: pad.bay.felt === index + 1 ? KeyFace.Chosen : KeyFace.Plain
                    text: [qsTr("Firm"), qsTr("Gives"), qsTr("Moves")][index]
                    means: [qsTr("no play, no noise, under a hard push"), qsTr("springs back, or rattles"), qsTr("grade 5: cannot wait")][index]
                    drawn: [KeySign.Firm, KeySign.Gives, KeySign.Moves][index]
                    narrow: felts.narrow
                    onClicked: pad.bay.push(index + 1)
                }
            }
        }

        MadeOnce {
            shown: pad.bay.gate

            GateKeys {
                y: felts.y + felts.room + Tokens.gap
                width: pad.column
                height: pushing.height - y
                bay: pad.bay
            }
        }
    }

    MadeOnce {
        shown: pad.walk.writable && pad.typing

        CoatingKeys {
            x: pad.keysX
            y: pad.wide ? 0 : measuring.y + measuring.height + Tokens.inset
            width: pad.column
            height: (pad.wide ? pad.height : acts.y - Tokens.inset) - y
            onDigit: digit => pad.bay.digit(digit)
            onNextSlot: pad.bay.nextSlot()
            onErase: pad.bay.backspace()
        }
    }

    Column {
        id: measuring

        visible: pad.walk.writable
        x: pad.besideX
        y: pad.wide || pad.typing ? 0 : others.y - Tokens.gap - height
        width: pad.column
        spacing: Tokens.gap

        InkText {
            visible: pad.wide || !pad.typing
            width: parent.width
            text: qsTr("Measure where it looks worst")
            bold: true
            fontSizeMode: Text.HorizontalFit
            minimumPixelSize: Tokens.smallText
        }

        Row {
            id: measures

            readonly property int count: pad.typing ? 4 : 3
            readonly property real keyWidth: (width - spacing * (count - 1)) / count

            width: parent.width
            spacing: Tokens.gap

            OctagonKey {
                objectName: "toPush"
                visible: pad.typing
                width: measures.keyWidth
                height: pad.rowHeight
                text: qsTr("Push")
                textSize: Tokens.bodyText
                secondLine: pad.bay.feltWords
                secondTextSize: Tokens.smallText
                onClicked: pad.bay.measure(-1)
            }

            Repeater {
                model: pad.bay

                OctagonKey {
                    required property int index
                    required property string name
                    required property string limit
                    required property bool current
                    required property bool outside

                    objectName: "measure" + index + "Key"
                    width: measures.keyWidth
                    height: pad.rowHeight
                    look: current ? KeyFace.Chosen : KeyFace.Plain
                    text: [qsTr("Height"), qsTr("Gap"), qsTr("Gap below")][index]
                    textSize: pad.typing ? Tokens.bodyText : Tokens.labelText
                    secondLine: pad.typing ? "" : outside ? qsTr("look again") : limit
                    secondTextSize: Tokens.captionText
                    onClicked: pad.bay.measure(index)
                }
            }
        }
    }

    Row {
        id: others

        readonly property int count: torques.visible ? 2 : 1
        readonly property real keyWidth: (width - spacing * (count - 1)) / count

        visible: pad.walk.writable && (pad.wide || !pad.typing)
        x: pad.besideX
        y: pad.wide ? measuring.y + measuring.height + Tokens.gap : acts.y - Tokens.gap - height
        width: pad.column
        height: pad.rowHeight
        spacing: Tokens.gap

        OctagonKey {
            id: torques

            objectName: "torquePad"
            visible: pad.bay.tightens && pad.walk.torqueOffered
            width: others.keyWidth
            height: others.height
            text: qsTr("Tighten")
            textSize: Tokens.labelText
            secondLine: qsTr("its screws")
            onClicked: pad.walk.openPad(WalkModel.TorquePad)
        }

        OctagonKey {
            objectName: "findingPad"
            width: others.keyWidth
            height: others.height
            text: qsTr("Finding")
            textSize: Tokens.labelText
            secondLine: qsTr("on this bay")
            onClicked: pad.walk.openPad(WalkModel.FindingPad)
        }
    }

    ActKeys {
        id: acts

        x: pad.besideX
        y: pad.wide ? others.y + others.height + Tokens.gap : pad.height - height
        width: pad.column
        height: pad.wide ? pad.height - y : Tokens.mainActHeight
        stacked: pad.wide
        writes: pad.walk.writable
        undoes: pad.walk.undoWords
        main: pad.walk.nextBayWords === "" ? qsTr("The last post") : qsTr("Next bay")
        mainMeans: pad.walk.nextBayWords
        after: pad.walk.nextPostLabel === "" ? "" : qsTr("Post %1").arg(pad.walk.nextPostLabel)
        onUndo: pad.walk.undo()
        onAct: pad.walk.nextBay()
        onForward: pad.walk.stepPost(1)
    }
}
