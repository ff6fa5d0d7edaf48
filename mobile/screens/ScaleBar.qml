// What the bands are drawn to: a bar of a round length, and a line of what is drawn.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: foot

    property int metres: 1
    property real pixelsPerMetre: 1
    /// Left free at the right for a key.
    property real keyRoom: 0

    implicitHeight: Math.max(Tokens.bandFootHeight, words.implicitHeight + Tokens.inset)
    color: Tokens.shade
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("All runs are at one scale. Rust is drawn where the last grade was 3 or more.")

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    Column {
        id: ruler

        x: Tokens.pageMargin
        anchors.verticalCenter: parent.verticalCenter
        width: foot.metres * foot.pixelsPerMetre
        spacing: Tokens.smallGap

        Item {
            width: parent.width
            height: nought.implicitHeight

            InkText {
                id: nought

                text: qsTr("0")
                font.pixelSize: Tokens.smallText
            }

            InkText {
                x: parent.width - implicitWidth / 2
                text: qsTr("%L1 m").arg(foot.metres)
                font.pixelSize: Tokens.smallText
            }
        }

        Row {
            Repeater {
                model: 5

                Rectangle {
                    required property int index

                    width: ruler.width / 5
                    height: Tokens.scaleBarHeight
                    color: index % 2 === 0 ? Tokens.ink : Tokens.sheet
                    border.color: Tokens.ink
                    border.width: Tokens.hairStroke
                }
            }
        }
    }

    Column {
        id: words

        anchors.left: ruler.right
        anchors.leftMargin: Tokens.pageMargin * 3
        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin + foot.keyRoom
        anchors.verticalCenter: parent.verticalCenter

        InkText {
            width: parent.width
            text: qsTr("all runs at one scale; touch a run to walk it")
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            text: qsTr("rust drawn where last graded 3 or more; a chalk ring is a finding")
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }
    }
}
