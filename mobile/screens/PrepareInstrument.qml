// An instrument with its certificate. One that is out of date is struck through and stays behind.
import QtQuick
import Kneerail.Ui

Item {
    id: row

    required property int index
    required property string name
    required property string why
    required property string figure
    required property string spoken
    required property int sign
    required property bool on

    objectName: "instrument" + index
    implicitHeight: words.implicitHeight + Tokens.gap * 1.5
    Accessible.role: Accessible.StaticText
    Accessible.name: row.spoken

    Octagon {
        anchors.fill: parent
        fill: row.on ? Tokens.sheet : Tokens.shade
        edge: row.on ? Tokens.edge : Tokens.line
        edgeWidth: Tokens.keyEdge
        cut: Tokens.keyCut
    }

    PrepareSign {
        id: mark

        x: Tokens.inset
        anchors.verticalCenter: parent.verticalCenter
        sign: row.sign

        Rectangle {
            anchors.centerIn: parent
            visible: !row.on
            width: parent.width * 1.15
            height: Tokens.keyEdge * 1.5
            rotation: -40
            color: Tokens.ink
        }
    }

    Column {
        id: words

        anchors.left: mark.right
        anchors.leftMargin: Tokens.inset
        anchors.right: parent.right
        anchors.rightMargin: Tokens.inset
        anchors.verticalCenter: parent.verticalCenter

        InkText {
            width: parent.width - take.implicitWidth
            text: row.name
            bold: true
            font.pixelSize: Tokens.labelText
            font.strikeout: !row.on
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            text: row.why
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
        }
    }

    InkText {
        id: take

        anchors.right: parent.right
        anchors.rightMargin: Tokens.inset
        y: words.y
        text: row.figure
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
    }
}
