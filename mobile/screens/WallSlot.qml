// A slot for the wall at one hour of the clock: the tube's section with the probe on it, then the value.
import QtQuick
import Kneerail.Ui

ReadingSlot {
    id: slot

    required property int clock
    required property string spoken

    textFrom: ring.x + ring.width
    textSize: Tokens.labelText
    Accessible.name: {
        const place = qsTr("%1, %2").arg(slot.spoken).arg(slot.text === "" ? qsTr("empty") : slot.text);
        return slot.ghost === "" ? place : qsTr("%1, last visit %2").arg(place).arg(slot.ghost);
    }
    Accessible.description: slot.notKept ? qsTr("not kept") : ""

    KeySign {
        id: ring

        x: Tokens.smallGap
        anchors.verticalCenter: parent.verticalCenter
        width: Tokens.signHeight
        height: Tokens.signHeight
        kind: KeySign.Probe
        hour: slot.clock
        ink: Tokens.edge
        chalk: Tokens.chalk
    }
}
