// Finding in the Walk: the photograph with what is ringed on it over the drawing; before there is one, the tablet's newest pictures under it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: place

    required property WalkModel walk
    readonly property FindingPen finding: walk.finding
    readonly property bool taken: finding.photographs > 0
    property bool oneMore: false
    property bool pointing: false
    readonly property bool choosing: !taken || oneMore
    readonly property real footHeight: foot.height

    Connections {
        target: place.finding

        function onChanged() {
            if (!place.taken)
                place.pointing = false;
        }
    }

    DropArea {
        objectName: "pictureDrop"
        anchors.fill: parent
        keys: ["text/uri-list"]
        onDropped: drop => {
            for (const file of drop.urls)
                place.finding.takePicture(file);
        }
    }

    Rectangle {
        id: sheet

        visible: place.taken
        width: parent.width
        height: parent.height - foot.height
        color: Tokens.dark ? Tokens.paper : Tokens.ink

        // What is under the picture is not touched through it.
        MouseArea {
            anchors.fill: parent
        }

        Image {
            id: picture

            objectName: "photograph"
            anchors.fill: parent
            source: place.finding.photographSource
            sourceSize.width: sheet.width
            fillMode: Image.PreserveAspectFit
            asynchronous: true
            Accessible.role: Accessible.Graphic
            Accessible.name: qsTr("%1 of %2").arg(place.finding.photographCaption).arg(place.finding.title)
        }

        PictureMarks {
            id: marks

            objectName: "pictureMarks"
            readonly property bool shown: picture.paintedWidth > 0

            x: shown ? (picture.width - picture.paintedWidth) / 2 : 0
            y: shown ? (picture.height - picture.paintedHeight) / 2 : 0
            width: shown ? picture.paintedWidth : picture.width
            height: shown ? picture.paintedHeight : picture.height
            marks: place.finding.marks
            stroke: Tokens.ringOnPicture
            pointing: place.pointing
            writes: place.walk.writable && picture.status === Image.Ready
            onDrawn: mark => place.finding.mark(mark)
        }

        Rectangle {
            x: Tokens.inset
            y: Tokens.inset
            width: sheet.width * 0.32
            height: width * 0.72
            color: Tokens.paper
            border.color: Tokens.edge
            border.width: Tokens.keyEdge

            ElevationView {
                id: view

                anchors.fill: parent
                anchors.margins: Tokens.keyEdge
                clip: true
                enabled: false
                picture: place.walk.run
                deckMargin: Tokens.pageMargin
                scaleDenominator: Tokens.tagScale
                saysScale: false
            }

            FindingSign {
                visible: view.hasChosen
                kind: FindingSign.Ring
                chalk: Tokens.chalk
                width: Tokens.signWidth
                height: width
                x: view.x + view.chosenRect.x + (view.chosenRect.width - width) / 2
                y: view.y + view.chosenRect.y + (view.chosenRect.height - height) / 2
            }
        }
    }

    Rectangle {
        id: foot

        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.pictureFootHeight
        color: Tokens.shade

        MouseArea {
            anchors.fill: parent
        }

        Rectangle {
            width: parent.width
            height: Tokens.keyEdge
            color: Tokens.edge
        }

        MadeOnce {
            shown: place.choosing

            PictureStrip {
                visible: place.choosing
                anchors.fill: foot
                anchors.margins: Tokens.inset
                finding: place.finding
                more: place.taken
                onTaken: place.oneMore = false
                onLeave: place.oneMore = false
            }
        }

        MadeOnce {
            shown: !place.choosing

            PictureKeys {
                visible: !place.choosing
                anchors.fill: foot
                anchors.margins: Tokens.inset
                finding: place.finding
                pointing: place.pointing
                undoes: place.walk.undoWords
                onRings: place.pointing = false
                onPoints: place.pointing = true
                onMoreWanted: place.oneMore = true
                onUndo: place.walk.undo()
            }
        }
    }
}
