// The top rail: a tube across the window, the rooms' tags hung on it, and the title block at its right.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: rail

    default property alias tags: tagRow.data
    property alias cells: titleBlock.data

    implicitHeight: Tokens.railHeight
    color: Tokens.sheet

    SleeveTube {
        y: Tokens.tubeTop
        width: parent.width
        height: Tokens.tubeHeight + Tokens.keyEdge
        sleeve: false
        stroke: Tokens.keyEdge
        zinc: Tokens.zinc
        light: Tokens.zincLight
        shade: Tokens.zincShade
        edge: Tokens.edge
    }

    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    Row {
        id: tagRow

        x: Tokens.inset
        spacing: Tokens.gap
    }

    Row {
        id: titleBlock

        anchors.right: parent.right
        anchors.top: parent.top
        anchors.topMargin: Tokens.tagTop
        height: parent.height - Tokens.tagTop - Tokens.keyEdge
    }
}
