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
    property string lookAgain
    property string lookAgainMeans
    property string before
    property string after
    property string undoes
    property bool coating: true
    property bool torque: true
    property bool wide: false
    property bool leftHanded: Tokens.leftHanded
    readonly property real room: height - heading.height - counted.height - Tokens.gap * 4
    readonly property real rowHeight: Math.max(Tokens.touchTarget, Math.min(Tokens.mainActHeight, room * 0.2))

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
            height: pad.room - pad.rowHeight * (pad.wide ? 2 : 3) - (pad.wide ? 0 : Tokens.gap)
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
            textSize: pad.wide ? Tokens.labelText : Tokens.smallText
            onChosen: which => pad.padChosen(which)
        }

        Grid {
            width: parent.width
            columns: pad.wide ? 4 : 2
            spacing: Tokens.gap
            layoutDirection: pad.leftHanded ? Qt.RightToLeft : Qt.LeftToRight

            readonly property real keyWidth: (width - spacing * (columns - 1)) / columns

            OctagonKey {
                objectName: "back"
                width: parent.keyWidth
                height: pad.rowHeight
                text: pad.before
                textSize: Tokens.labelText
                secondLine: pad.before === "" ? "" : qsTr("back")
                enabled: pad.before !== ""
                onClicked: pad.backward()
            }

            OctagonKey {
                objectName: "skip"
                visible: pad.writes
                width: parent.keyWidth
                height: pad.rowHeight
                text: qsTr("Skip, say why")
                textSize: Tokens.bodyText
                onClicked: pad.skip()
            }

            OctagonKey {
                objectName: "undo"
                visible: pad.writes
                width: parent.keyWidth
                height: pad.rowHeight
                text: qsTr("Undo")
                textSize: Tokens.labelText
                secondLine: pad.undoes
                enabled: pad.undoes !== ""
                onClicked: pad.undo()
            }

            OctagonKey {
                objectName: "on"
                width: parent.keyWidth
                height: pad.rowHeight
                text: pad.after
                textSize: Tokens.labelText
                secondLine: pad.after === "" ? "" : qsTr("on, leave open")
                enabled: pad.after !== ""
                onClicked: pad.forward()
            }
        }
    }
}
