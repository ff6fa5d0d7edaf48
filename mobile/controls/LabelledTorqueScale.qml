// The straight torque scale in its frame, with its name and steps for those who do not slide.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: frame

    property alias target: scale.target
    property alias lowest: scale.lowest
    property alias value: scale.value

    signal settled(value: real)

    implicitHeight: Tokens.torqueScaleHeight
    color: Tokens.sheet
    border.color: activeFocus ? Tokens.ink : Tokens.line
    border.width: activeFocus ? Tokens.focusRing : Tokens.ruleStroke
    activeFocusOnTab: true
    Accessible.role: Accessible.Slider
    Accessible.focusable: true
    Accessible.name: value < 0 ? qsTr("About where it moved, no mark yet") : qsTr("About where it moved, %1 N·m").arg(value)
    Accessible.onIncreaseAction: scale.step(1)
    Accessible.onDecreaseAction: scale.step(-1)
    Keys.onLeftPressed: scale.step(-1)
    Keys.onRightPressed: scale.step(1)

    TorqueScale {
        id: scale

        anchors.fill: parent
        lowestWord: qsTr("min")
        ink: Tokens.ink
        ink2: Tokens.ink2
        chalk: Tokens.chalk
        paper: Tokens.sheet
        rust: Tokens.rust
        stroke: Tokens.keyEdge
        tickFont: Qt.font({
            family: Tokens.textFamily,
            pixelSize: Tokens.smallText
        })
        markFont: Qt.font({
            family: Tokens.textFamily,
            pixelSize: Tokens.labelText,
            bold: true
        })
        onSettled: value => frame.settled(value)
    }
}
