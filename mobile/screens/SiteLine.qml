// Portrait: the line under the rail, what you are in and what is kept here.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: line

    property string where
    property string kept

    implicitHeight: Tokens.siteLineHeight
    color: Tokens.sheet

    InkText {
        id: whereText

        anchors.left: parent.left
        anchors.leftMargin: Tokens.margin
        anchors.right: keptText.left
        anchors.rightMargin: Tokens.gap
        anchors.verticalCenter: parent.verticalCenter
        text: line.where
        bold: true
        elide: Text.ElideRight
    }

    InkText {
        id: keptText

        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(implicitWidth, line.width / 2)
        text: line.kept
        color: Tokens.ink2
        font.pixelSize: Tokens.cellText
        elide: Text.ElideRight
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }
}
