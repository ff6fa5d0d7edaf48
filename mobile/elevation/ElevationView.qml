// A run drawn to scale, with one object for each part in view that a screen reader finds.
import QtQuick
import Kneerail.Ui

ElevationItem {
    id: view

    property bool saysScale: true

    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("drawing of the run, arrow keys go from part to part")
    Accessible.description: view.waterWords

    Text {
        id: scaleWords

        // When the view is at rest, in the ground between the bolts of one post and those of the next.
        readonly property real beyondBolts: Tokens.boltsBeside
        readonly property real room: view.bayWidth - beyondBolts - Tokens.margin
        readonly property real bayLeft: view.width / 2 + view.bayWidth * (view.picture && view.picture.bay >= 0 ? -0.5 : view.thumbSide === Qt.LeftEdge ? -1 : 0)

        visible: view.saysScale && shortWords.advanceWidth <= room
        x: bayLeft + beyondBolts + (room - width) / 2
        y: view.contentY + Tokens.glyphOnDrawing - height / 2
        text: longWords.advanceWidth <= room ? view.scaleText : view.shortScaleText
        color: Tokens.ink2
        font.family: Tokens.textFamily
        font.pixelSize: Tokens.smallText
        Accessible.role: Accessible.StaticText
        Accessible.name: scaleWords.text
    }

    TextMetrics {
        id: longWords

        font: scaleWords.font
        text: view.scaleText
    }

    TextMetrics {
        id: shortWords

        font: scaleWords.font
        text: view.shortScaleText
    }

    PartNames {
        x: view.contentX
        y: view.contentY
        parts: view.visibleParts
        onPressed: (part) => view.partTouched(part)
    }
}
