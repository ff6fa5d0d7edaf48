// A sign: the screen, and on which side of it the keys are.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: sign

    property bool leftHanded: false
    property color ink: Tokens.ink

    width: Tokens.signWidth
    height: Tokens.signHeight
    color: "transparent"
    border.color: sign.ink
    border.width: Tokens.keyEdge

    Rectangle {
        x: sign.leftHanded ? 0 : sign.width - width
        width: sign.width / 3
        height: sign.height
        color: sign.ink
    }
}
