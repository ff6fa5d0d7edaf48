// One thing that was done to hold people back or to warn them; ticked when it was done.
import QtQuick
import Kneerail.Ui

OctagonKey {
    id: key

    required property FindingPen finding
    required property int measure
    required property int drawn
    readonly property bool done: Array.from(finding.measures).indexOf(measure) >= 0

    objectName: "measure" + measure
    look: done ? KeyFace.Chosen : KeyFace.Plain
    boldText: done
    textSize: Tokens.smallText
    spoken: done ? qsTr("%1, done").arg(text) : qsTr("%1, not done").arg(text)
    onClicked: finding.touchMeasure(measure)
    sign: FindingSign {
        kind: key.drawn
        width: Tokens.signWidth
        height: Math.min(Tokens.signHeight, key.height * 0.5)
        ink: Tokens.edge
        chalk: Tokens.chalk
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
    }

    FindingSign {
        visible: key.done
        kind: FindingSign.Tick
        chalk: Tokens.chalk
        anchors.right: parent.right
        anchors.rightMargin: Tokens.inset
        y: Tokens.inset
        width: Tokens.margin * 1.2
        height: Tokens.margin
    }
}
