// A site that is carried or not, with what it takes on this disk.
import QtQuick
import Kneerail.Ui

KeyFace {
    id: key

    required property int index
    required property string name
    required property string figure
    required property string spoken
    required property bool on

    objectName: "carry" + index
    implicitHeight: Tokens.touchTarget
    Accessible.role: Accessible.CheckBox
    Accessible.checked: key.on
    Accessible.name: key.spoken

    Rectangle {
        id: box

        x: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: Tokens.signWidth * 0.7
        height: Tokens.signHeight * 0.6
        color: key.on ? Tokens.ink : Tokens.sheet
        border.color: Tokens.edge
        border.width: Tokens.keyEdge

        FindingSign {
            anchors.fill: parent
            anchors.margins: Tokens.keyEdge
            visible: key.on
            kind: FindingSign.Tick
            ink: Tokens.paper
            chalk: Tokens.paper
        }
    }

    InkText {
        anchors.left: box.right
        anchors.leftMargin: Tokens.inset
        anchors.right: bytes.left
        anchors.rightMargin: Tokens.gap
        anchors.verticalCenter: parent.verticalCenter
        text: key.name
        bold: key.on
        font.pixelSize: Tokens.labelText
        elide: Text.ElideRight
    }

    InkText {
        id: bytes

        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        text: key.figure
        color: Tokens.ink2
    }
}
