// Beside the day: the instruments with their certificates, the sites to carry, and the key that keeps the day and goes out.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: side

    required property PrepareModel prepare
    property bool portrait: false

    color: Tokens.shade

    Rectangle {
        width: side.portrait ? parent.width : Tokens.keyEdge
        height: side.portrait ? Tokens.keyEdge : parent.height
        color: Tokens.edge
    }

    Flickable {
        id: beside

        objectName: "prepareSide"
        anchors.top: parent.top
        anchors.bottom: go.top
        anchors.bottomMargin: Tokens.gap
        x: Tokens.margin
        width: parent.width - Tokens.margin * 2
        contentHeight: lists.implicitHeight + Tokens.margin
        boundsBehavior: Flickable.StopAtBounds
        clip: true

        Flow {
            id: lists

            readonly property real listWidth: side.portrait ? (width - spacing) / 2 : width

            y: Tokens.margin
            width: parent.width
            spacing: Tokens.margin

            Column {
                width: lists.listWidth
                spacing: Tokens.gap

                InkText {
                    text: qsTr("Instruments")
                    bold: true
                    font.pixelSize: Tokens.keyText
                }

                Repeater {
                    model: side.prepare.instruments

                    PrepareInstrument {
                        width: lists.listWidth
                    }
                }

                InkText {
                    objectName: "takeWords"
                    width: parent.width
                    text: side.prepare.takeWords
                    font.pixelSize: Tokens.smallText
                    wrapMode: Text.Wrap
                }
            }

            Column {
                width: lists.listWidth
                spacing: Tokens.gap

                InkText {
                    text: qsTr("Sites to carry")
                    bold: true
                    font.pixelSize: Tokens.keyText
                }

                Repeater {
                    model: side.prepare.carried

                    PrepareSite {
                        width: lists.listWidth
                        onClicked: side.prepare.carry(index)
                    }
                }

                InkText {
                    width: parent.width
                    visible: side.prepare.known
                    text: qsTr("All of them are on this disk; nothing has to be loaded.")
                    color: Tokens.ink2
                    font.pixelSize: Tokens.smallText
                    wrapMode: Text.Wrap
                }
            }
        }
    }

    Rectangle {
        anchors.bottom: beside.bottom
        x: beside.x
        width: beside.width
        height: more.implicitHeight + Tokens.gap
        visible: beside.contentHeight - beside.contentY > beside.height + Tokens.inset
        color: Tokens.tapeMeasure

        InkText {
            id: more

            anchors.centerIn: parent
            text: qsTr("more below: push it up")
            font.pixelSize: Tokens.smallText
        }
    }

    OctagonKey {
        id: go

        objectName: "walkIt"
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.margin
        x: Tokens.margin
        width: parent.width - Tokens.margin * 2
        height: Tokens.mainActHeight
        enabled: side.prepare.known
        look: KeyFace.Act
        text: qsTr("Keep and walk it")
        secondLine: qsTr("%1 · %2 carried").arg(side.prepare.chosenWords).arg(side.prepare.carryWords)
        textSize: Tokens.mainText
        onClicked: side.prepare.walkIt()
    }
}
