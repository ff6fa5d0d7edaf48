// What could not be done, in a sentence, until it is read: try again where that helps, or put it away.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: bar

    property string text
    property bool canTryAgain: false

    signal tryAgain
    signal putAway

    visible: text !== ""
    implicitHeight: Math.max(Tokens.inkBarHeight, inside.item ? inside.item.implicitHeight : 0)
    Accessible.role: Accessible.AlertMessage
    Accessible.name: bar.text

    MadeOnce {
        id: inside

        shown: bar.text !== ""

        Item {
            anchors.fill: parent
            implicitHeight: words.height + Tokens.margin

            Octagon {
                anchors.fill: parent
                fill: Tokens.ink
                edge: Tokens.ink
                edgeWidth: Tokens.keyEdge
                cut: Tokens.keyCut
            }

            MouseArea {
                anchors.fill: parent
            }

            InkText {
                id: words

                anchors.left: parent.left
                anchors.leftMargin: Tokens.margin
                anchors.right: keys.left
                anchors.rightMargin: Tokens.gap
                anchors.verticalCenter: parent.verticalCenter
                text: bar.text
                color: Tokens.paper
                bold: true
                wrapMode: Text.Wrap
            }

            Row {
                id: keys

                anchors.right: parent.right
                anchors.rightMargin: Tokens.gap
                anchors.verticalCenter: parent.verticalCenter
                spacing: Tokens.gap

                OctagonKey {
                    objectName: "tryAgain"
                    visible: bar.canTryAgain
                    width: implicitWidth + Tokens.margin
                    text: qsTr("Try again")
                    textSize: Tokens.labelText
                    onClicked: bar.tryAgain()
                }

                OctagonKey {
                    objectName: "putAway"
                    visible: !bar.canTryAgain
                    width: implicitWidth + Tokens.margin
                    text: qsTr("I have read it")
                    textSize: Tokens.labelText
                    onClicked: bar.putAway()
                }
            }
        }
    }
}
