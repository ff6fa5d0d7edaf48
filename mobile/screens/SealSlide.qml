// The sleeve that seals: slid over the joint with a finger, or by holding Enter. Let go before its end, it goes back.
import QtQuick
import Kneerail.Ui

FocusScope {
    id: slide

    /// On its way or done: the sleeve stays over the joint.
    property bool closed: false
    readonly property real travel: width - sleeve.width - Tokens.margin * 2

    signal sealed

    height: Tokens.mainActHeight + Tokens.margin
    activeFocusOnTab: true
    Accessible.role: Accessible.Button
    Accessible.name: qsTr("Slide the sleeve over the joint to seal")
    Accessible.description: qsTr("Or hold Enter for two seconds")
    Accessible.focusable: true
    Accessible.onPressAction: slide.sealed()
    Keys.onPressed: event => {
        if (event.isAutoRepeat || (event.key !== Qt.Key_Return && event.key !== Qt.Key_Enter))
            return;
        event.accepted = true;
        held.start();
    }
    Keys.onReleased: event => {
        if (!event.isAutoRepeat)
            held.stop();
    }
    onActiveFocusChanged: held.stop()

    Timer {
        id: held

        interval: Tokens.sealHoldTime
        onTriggered: slide.sealed()
    }

    Octagon {
        anchors.fill: parent
        fill: Tokens.sheet
        edge: Tokens.edge
        edgeWidth: Tokens.keyEdge
        cut: Tokens.keyCut
        focusRing: slide.activeFocus
        ring: Tokens.ink
    }

    SleeveTube {
        x: Tokens.keyEdge * 2
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width * 0.68
        height: Tokens.sleeveHeight
        sleeve: false
        stroke: Tokens.keyEdge
        zinc: Tokens.zinc
        light: Tokens.zincLight
        shade: Tokens.zincShade
        edge: Tokens.edge
    }

    SleeveTube {
        x: parent.width * 0.74
        anchors.verticalCenter: parent.verticalCenter
        width: parent.width - x - Tokens.keyEdge * 2
        height: Tokens.sleeveHeight
        sleeve: false
        stroke: Tokens.keyEdge
        zinc: Tokens.zinc
        light: Tokens.zincLight
        shade: Tokens.zincShade
        edge: Tokens.edge
    }

    KeySign {
        x: Tokens.margin * 2 + sleeve.width
        anchors.verticalCenter: parent.verticalCenter
        width: Tokens.signWidth * 1.6
        height: Tokens.signHeight
        kind: KeySign.Onward
        ink: Tokens.ink
    }

    Octagon {
        id: sleeve

        objectName: "sealSleeve"
        x: Tokens.margin
        anchors.verticalCenter: parent.verticalCenter
        width: Tokens.digitKeyWidth
        height: parent.height - Tokens.margin
        fill: Tokens.act
        edge: Tokens.act
        edgeWidth: Tokens.keyEdge
        cut: Tokens.keyCut

        InkText {
            anchors.centerIn: parent
            text: slide.closed ? qsTr("Sealed") : qsTr("Slide")
            color: Tokens.actInk
            bold: true
            font.pixelSize: Tokens.labelText
        }

        DragHandler {
            id: finger

            enabled: !slide.closed
            yAxis.enabled: false
            xAxis.minimum: Tokens.margin
            xAxis.maximum: Tokens.margin + slide.travel
            onActiveChanged: {
                if (active)
                    return;
                if (sleeve.x >= xAxis.maximum - Tokens.gap)
                    slide.sealed();
                sleeve.x = Qt.binding(() => slide.closed ? Tokens.margin + slide.travel : Tokens.margin);
            }
        }

        Behavior on x {
            enabled: !finger.active

            NumberAnimation {
                duration: Tokens.undoTime
                easing.type: Easing.OutQuad
            }
        }
    }

    onClosedChanged: sleeve.x = Qt.binding(() => slide.closed ? Tokens.margin + slide.travel : Tokens.margin)
}
