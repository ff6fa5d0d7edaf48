// One finding, open: its picture with the ring, its place in the drawing, what was done, and what is next by one touch.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: sheet

    required property FindingsModel findings
    property string undoes
    property bool portrait: false
    readonly property real side: portrait ? width : Tokens.padWidth
    readonly property real pictureWidth: portrait ? width : width - side
    readonly property real pictureHeight: portrait ? height - Tokens.portraitPadHeight * 1.3 : height
    readonly property bool pictured: String(findings.photograph) !== ""

    signal undo

    MouseArea {
        anchors.fill: parent
    }

    Rectangle {
        width: sheet.pictureWidth
        height: sheet.pictureHeight
        color: sheet.pictured && !Tokens.dark ? Tokens.ink : Tokens.paper

        Image {
            id: picture

            anchors.fill: parent
            source: sheet.findings.photograph
            sourceSize.width: sheet.pictureWidth
            fillMode: Image.PreserveAspectFit
            asynchronous: true
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("photograph of %1").arg(sheet.findings.title)
        }

        PictureMarks {
            visible: picture.paintedWidth > 0
            x: (picture.width - width) / 2
            y: (picture.height - height) / 2
            width: picture.paintedWidth
            height: picture.paintedHeight
            marks: sheet.findings.marks
            stroke: Tokens.ringOnPicture
        }

        InkText {
            visible: !sheet.pictured
            anchors.horizontalCenter: parent.horizontalCenter
            y: (parent.height + place.y + place.height) / 2
            text: qsTr("no photograph")
            color: Tokens.ink2
        }

        Rectangle {
            id: place

            x: sheet.pictured ? Tokens.inset : 0
            y: sheet.pictured ? Tokens.inset : 0
            width: sheet.pictured ? parent.width * 0.32 : parent.width
            height: sheet.pictured ? width * 0.72 : parent.height * 0.6
            color: Tokens.paper
            border.color: Tokens.edge
            border.width: Tokens.keyEdge

            ElevationView {
                anchors.fill: parent
                anchors.margins: Tokens.keyEdge
                clip: true
                enabled: false
                picture: sheet.findings.place
                deckMargin: sheet.pictured ? Tokens.pageMargin : Tokens.pageMargin * 2
                scaleDenominator: sheet.pictured ? Tokens.tagScale : Tokens.placeScale / 2
                saysScale: false
            }
        }
    }

    FindingActs {
        x: sheet.portrait ? 0 : sheet.pictureWidth
        y: sheet.portrait ? sheet.pictureHeight : 0
        width: sheet.side
        height: sheet.height - y
        findings: sheet.findings
        undoes: sheet.undoes
        portrait: sheet.portrait
        onUndo: sheet.undo()
    }
}
