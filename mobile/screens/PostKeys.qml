// The chosen post: as last time by one touch, the pads, back, skip, undo, on.
import QtQuick
import Kneerail.Ui

Item {
    id: pad

    property bool writes: true
    property string counts
    property string post
    property string about
    property bool asLastTime: false
    property string pushedMeans
    /// Last visit's, of the post's joints from the top down.
    property list<int> lastGrades
    property string lookAgain
    property string lookAgainMeans
    property string before
    property string after
    property string undoes
    property bool coating: true
    property bool torque: true
    property bool wall: true
    property bool wide: false
    property bool leftHanded: Tokens.leftHanded
    readonly property real room: height - heading.height - counted.height - Tokens.gap * 4
    readonly property int rows: wide ? 2 : 3  // of keys under the main acts
    /// One act needs no more room than a key; two stand apart from the others by their size.
    readonly property real rowHeight: asLastTime ? Math.max(Tokens.touchTarget, Math.min(Tokens.mainActHeight, room * 0.2)) : (room - (wide ? 0 : Tokens.gap)) / (rows + 1)

    signal pushed
    signal looked
    signal lookedAgain
    signal padChosen(pad: int)
    signal backward
    signal skip
    signal undo
    signal forward

    Column {
        anchors.fill: parent
        spacing: Tokens.gap

        InkText {
            id: heading

            width: parent.width
            text: pad.about === "" ? pad.post : qsTr("%1  %2").arg("<b>" + pad.post + "</b>").arg(pad.about)
            textFormat: Text.StyledText
            wrapMode: Text.Wrap
            font.pixelSize: Tokens.labelText
        }

        InkText {
            id: counted

            objectName: "runCounts"
            width: parent.width
            text: pad.counts
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            elide: Text.ElideRight
        }

        Grid {
            id: acts

            readonly property real keyHeight: pad.wide ? height : (height - spacing) / 2

            width: parent.width
            height: pad.room - pad.rowHeight * pad.rows - (pad.wide ? 0 : Tokens.gap)
            columns: pad.wide ? 2 : 1
            spacing: Tokens.gap
            layoutDirection: pad.leftHanded ? Qt.RightToLeft : Qt.LeftToRight

            OctagonKey {
                objectName: "pushed"
                visible: pad.asLastTime && pad.writes
                width: pad.wide ? (parent.width - parent.spacing) * 0.63 : parent.width
                height: acts.keyHeight
                look: OctagonKey.Act
                text: qsTr("Pushed, as last time")
                textSize: Tokens.mainText
                secondLine: pad.pushedMeans
                sign: LastRings {
                    grades: pad.lastGrades
                    most: acts.width * (pad.wide ? 0.63 : 1) - Tokens.pageMargin * 2
                }
                onClicked: pad.pushed()
            }

            OctagonKey {
                objectName: "looked"
                visible: pad.asLastTime && pad.writes
                width: pad.wide ? (parent.width - parent.spacing) * 0.37 : parent.width
                height: acts.keyHeight
                text: qsTr("Looked, as last time")
                secondLine: qsTr("by eye, bay not pushed")
                onClicked: pad.looked()
            }

            OctagonKey {
                objectName: "lookAgain"
                visible: !pad.asLastTime && pad.writes
                width: parent.width
                height: acts.height
                look: OctagonKey.Act
                text: pad.lookAgain
                textSize: Tokens.mainText
                secondLine: pad.lookAgainMeans
                onClicked: pad.lookedAgain()
            }
        }

        PadChoices {
            visible: pad.writes
            width: parent.width
            height: pad.rowHeight
            choosing: false
            coating: pad.coating
            torque: pad.torque
            wall: pad.wall
            textSize: pad.wide ? Tokens.labelText : Tokens.smallText
            onChosen: which => pad.padChosen(which)
        }

        PostSteps {
            width: parent.width
            height: pad.rowHeight * (pad.wide ? 1 : 2) + (pad.wide ? 0 : Tokens.gap)
            wide: pad.wide
            leftHanded: pad.leftHanded
            before: pad.before
            after: pad.after
            undoes: pad.undoes
            writes: pad.writes
            onBackward: pad.backward()
            onSkip: pad.skip()
            onUndo: pad.undo()
            onForward: pad.forward()
        }
    }
}
