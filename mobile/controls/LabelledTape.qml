// The tape of hours with its name, and steps for those who do not slide.
import QtQuick
import Kneerail.Ui

FocusScope {
    id: frame

    property alias minutes: tape.minutes
    property alias most: tape.most
    property string spokenTime

    signal moved(minutes: int)

    implicitHeight: Tokens.touchTarget
    activeFocusOnTab: true
    Accessible.role: Accessible.Slider
    Accessible.focusable: true
    Accessible.name: qsTr("Time on site, %1").arg(frame.spokenTime)
    Accessible.onIncreaseAction: tape.move(1)
    Accessible.onDecreaseAction: tape.move(-1)
    Keys.onLeftPressed: tape.move(-1)
    Keys.onRightPressed: tape.move(1)
    Keys.onPressed: event => {
        const steps = event.key === Qt.Key_PageUp ? 6 : event.key === Qt.Key_PageDown ? -6 : event.key === Qt.Key_Home ? -tape.length : event.key === Qt.Key_End ? tape.length : 0;
        if (steps === 0)
            return;
        event.accepted = true;
        tape.move(steps);
    }

    TimeTape {
        id: tape

        objectName: "timeTape"
        anchors.fill: parent
        ink: Tokens.ink
        edge: Tokens.edge
        filled: Tokens.chalkLight
        empty: Tokens.tapeMeasure
        cutOff: Tokens.shade
        slide: Tokens.chalk
        grip: Tokens.paper
        stroke: Tokens.keyEdge
        hourFont: Qt.font({
            family: Tokens.textFamily,
            pixelSize: Tokens.smallText,
            bold: true
        })
        onMoved: minutes => frame.moved(minutes)
    }

    Rectangle {
        anchors.fill: parent
        anchors.margins: -Tokens.focusRing
        visible: frame.activeFocus
        color: "transparent"
        border.color: Tokens.ink
        border.width: Tokens.focusRing
    }
}
