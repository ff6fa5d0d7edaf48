// The foot of a pad: undo, and the main act at the outer edge. Stacked, with the way to the next post, where there is room.
import QtQuick
import Kneerail.Ui

Item {
    id: acts

    property bool writes: true
    property string undoes
    property string main
    property string mainMeans
    property string after
    property bool stacked: false
    property bool leftHanded: Tokens.leftHanded
    readonly property real row: stacked ? (height - Tokens.gap) / 2 : height
    readonly property real undoWidth: stacked ? (width - Tokens.gap) / 2 : Tokens.digitKeyWidth

    signal undo
    signal act
    signal forward

    implicitHeight: Tokens.mainActHeight

    OctagonKey {
        objectName: "undo"
        visible: acts.writes
        x: acts.stacked || !acts.leftHanded ? 0 : acts.width - width
        y: acts.stacked ? acts.row + Tokens.gap : 0
        width: acts.undoWidth
        height: acts.row
        text: qsTr("Undo")
        textSize: Tokens.labelText
        secondLine: acts.undoes
        enabled: acts.undoes !== ""
        onClicked: acts.undo()
    }

    OctagonKey {
        objectName: "mainAct"
        x: acts.stacked || acts.leftHanded ? 0 : acts.width - width
        width: acts.stacked ? acts.width : acts.width - acts.undoWidth - Tokens.gap
        height: acts.row
        look: OctagonKey.Act
        text: acts.main
        textSize: Tokens.mainText
        secondLine: acts.mainMeans
        onClicked: acts.act()
    }

    OctagonKey {
        objectName: "nextPost"
        visible: acts.stacked
        x: acts.width - width
        y: acts.row + Tokens.gap
        width: acts.undoWidth
        height: acts.row
        text: acts.after
        textSize: Tokens.labelText
        secondLine: acts.after === "" ? "" : qsTr("on, leave open")
        enabled: acts.after !== ""
        onClicked: acts.forward()
    }
}
