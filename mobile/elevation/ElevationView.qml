// A run drawn to scale, with one object for each part in view that a screen reader finds.
import QtQuick
import Kneerail.Ui

ElevationItem {
    id: view

    property bool saysScale: true

    Accessible.role: Accessible.Graphic
    Accessible.name: qsTr("drawing of the run, arrow keys go from part to part")

    Text {
        id: scaleWords

        visible: view.saysScale
        // Between two posts when the view is at rest.
        x: view.width * (view.thumbSide === Qt.LeftEdge ? 0.3 : 0.7) - width / 2
        y: view.contentY + Tokens.glyphOnDrawing - height / 2
        text: view.scaleText
        color: Tokens.ink2
        font.family: Tokens.textFamily
        font.pixelSize: Tokens.smallText
        Accessible.role: Accessible.StaticText
        Accessible.name: scaleWords.text
    }

    PartNames {
        x: view.contentX
        y: view.contentY
        parts: view.visibleParts
        onPressed: (part) => view.partTouched(part)
    }
}
