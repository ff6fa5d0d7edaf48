// Says for ten seconds what was taken back or taken off, with one key to undo it. It never covers a key.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: bar

    property string text
    property string secondLine
    property string act: qsTr("Undo")

    signal undone

    function show(text: string, secondLine: string) {
        bar.text = text;
        bar.secondLine = secondLine;
        stay.restart();
    }

    function hide() {
        stay.stop();
    }

    implicitHeight: Tokens.inkBarHeight
    visible: stay.running
    Accessible.role: Accessible.AlertMessage
    Accessible.name: bar.text

    Timer {
        id: stay

        interval: Tokens.inkBarTime
    }

    MadeOnce {
        shown: stay.running

        Item {
            anchors.fill: parent

            Octagon {
                anchors.fill: parent
                fill: Tokens.ink
                edge: Tokens.ink
                edgeWidth: Tokens.keyEdge
                cut: Tokens.keyCut
            }

            // What is under the bar is not touched through it.
            MouseArea {
                anchors.fill: parent
            }

            Column {
                anchors.left: parent.left
                anchors.leftMargin: Tokens.margin
                anchors.right: undo.left
                anchors.rightMargin: Tokens.gap
                anchors.verticalCenter: parent.verticalCenter

                InkText {
                    width: parent.width
                    text: bar.text
                    bold: true
                    color: Tokens.paper
                    font.pixelSize: Tokens.labelText
                    elide: Text.ElideRight
                }

                InkText {
                    width: parent.width
                    visible: text !== ""
                    text: bar.secondLine
                    color: Tokens.paper
                    font.pixelSize: Tokens.smallText
                    elide: Text.ElideRight
                }
            }

            OctagonKey {
                id: undo

                objectName: "barAct"
                anchors.right: parent.right
                anchors.rightMargin: Tokens.gap
                anchors.verticalCenter: parent.verticalCenter
                height: parent.height - Tokens.gap * 2
                text: bar.act
                spoken: qsTr("%1: %2").arg(bar.act).arg(bar.text)
                onClicked: {
                    bar.hide();
                    bar.undone();
                }
            }
        }
    }
}
