// The foot of a gauge's check: undo, whether the gauge is in order, and keep.
import QtQuick
import Kneerail.Ui

Item {
    id: acts

    required property GaugeCheck check
    property string undoes
    property bool stacked: false
    readonly property bool mirrored: Tokens.leftHanded && !stacked
    readonly property real row: stacked ? (height - Tokens.gap) / 2 : height
    readonly property real third: (width - Tokens.gap * 2) / 3
    readonly property real small: stacked ? (width - Tokens.gap) / 2 : third

    signal undo

    OctagonKey {
        objectName: "undo"
        x: acts.mirrored ? acts.width - width : 0
        y: acts.stacked ? acts.row + Tokens.gap : 0
        width: acts.small
        height: acts.row
        text: qsTr("Undo")
        textSize: Tokens.labelText
        secondLine: acts.undoes
        enabled: acts.undoes !== ""
        onClicked: acts.undo()
    }

    OctagonKey {
        objectName: "inOrder"
        x: acts.small + Tokens.gap
        y: acts.stacked ? acts.row + Tokens.gap : 0
        width: acts.small
        height: acts.row
        text: acts.check.inOrder ? qsTr("In order") : qsTr("Not in order")
        textSize: Tokens.bodyText
        secondLine: acts.check.inOrder ? qsTr("touch if not") : qsTr("touch if it is")
        secondTextSize: Tokens.captionText
        spoken: acts.check.inOrder ? qsTr("In order. Touch to say that it is not") : qsTr("Not in order. Touch to say that it is")
        enabled: acts.check.hasReading
        onClicked: acts.check.sayInOrder(!acts.check.inOrder)
    }

    OctagonKey {
        objectName: "mainAct"
        x: acts.stacked || acts.mirrored ? 0 : acts.width - width
        width: acts.stacked ? acts.width : acts.third
        height: acts.row
        look: OctagonKey.Act
        text: acts.check.hasReading ? qsTr("Keep") : qsTr("Back")
        textSize: Tokens.mainText
        secondLine: acts.check.hasReading ? (acts.check.inOrder ? qsTr("in order") : qsTr("not in order")) : qsTr("to the walk")
        onClicked: acts.check.keep()
    }
}
