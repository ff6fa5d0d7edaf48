// All posts of the run on one line; a finger anywhere on it takes the elevation there.
import QtQuick
import Kneerail.Ui

RunLineItem {
    id: line

    implicitHeight: Tokens.runLineHeight
    Accessible.role: Accessible.Slider
    Accessible.name: line.spokenName
    Accessible.focusable: true
    Accessible.onIncreaseAction: line.stepPost(1)
    Accessible.onDecreaseAction: line.stepPost(-1)

    Rectangle {
        x: line.windowRect.x
        y: line.windowRect.y
        width: line.windowRect.width
        height: line.windowRect.height
        color: "transparent"
        border.color: Tokens.chalk
        border.width: Tokens.noteStroke
    }
}
