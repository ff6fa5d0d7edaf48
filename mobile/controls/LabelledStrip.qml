// Last visit's readings and today's on one scale, in their frame. A reading that is kept drops on to it.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: frame

    property alias today: strip.today
    property alias last: strip.last
    property alias limit: strip.limit
    property string spoken

    color: Tokens.sheet
    border.color: Tokens.line
    border.width: Tokens.hairStroke
    Accessible.role: Accessible.Graphic
    Accessible.name: frame.spoken

    ReadingStrip {
        id: strip

        objectName: "strip"
        anchors.fill: parent
        ink: Tokens.ink2
        ghost: Tokens.ghost
        chalk: Tokens.chalk
        rust: Tokens.rust
        dotRadius: Tokens.dotRadius
        font: Qt.font({
            family: Tokens.textFamily,
            pixelSize: Tokens.captionText
        })
        onReadingsChanged: if (Tokens.dotDropTime > 0)
            fall.restart()

        NumberAnimation on drop {
            id: fall

            from: 0
            to: 1
            duration: Tokens.dotDropTime
            easing.type: Easing.OutCubic
            running: false
        }
    }
}
