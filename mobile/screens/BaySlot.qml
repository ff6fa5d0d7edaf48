// One thing of a bay: what it is and the owner's rule, what it measures now, what it was.
import QtQuick
import Kneerail.Ui

ReadingSlot {
    id: slot

    property string name
    property string limit
    property string spoken
    property string was

    showsText: false
    Accessible.name: slot.spoken
    Accessible.description: slot.notKept ? qsTr("not kept") : ""

    InkText {
        id: caption

        x: Tokens.inset
        y: Tokens.smallGap
        width: parent.width - Tokens.inset * 2
        text: slot.limit === "" ? slot.name : qsTr("%1, %2").arg(slot.name).arg(slot.limit)
        color: Tokens.ink2
        font.pixelSize: Tokens.captionText
        elide: Text.ElideRight
    }

    InkText {
        id: value

        anchors.left: caption.left
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.smallGap
        text: slot.text
        bold: true
        color: slot.lookAgain ? Tokens.rust : Tokens.ink
        font.pixelSize: Tokens.keyText
    }

    Rectangle {
        visible: slot.current
        x: value.x + value.width + Tokens.smallGap
        anchors.verticalCenter: value.verticalCenter
        width: Tokens.keyEdgeChosen
        height: Tokens.keyText
        color: Tokens.chalk
    }

    InkText {
        anchors.right: caption.right
        anchors.baseline: value.baseline
        text: slot.was === "" ? "" : qsTr("last %1").arg(slot.was)
        visible: slot.width - value.width > implicitWidth + Tokens.inset * 3
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
    }
}
