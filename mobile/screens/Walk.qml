// Walk: the run to scale, the chosen part with its note, the run line, and the pad under the thumb.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property WalkModel walk
    property bool skipping: false
    property bool hands: false
    property bool gauge: false
    property bool closing: false
    required property VisitClose close
    property int skipTo: -1

    function openGauge() {
        room.leaveSkip();
        room.hands = false;
        room.gauge = true;
    }

    function leaveGauge() {
        room.walk.check.keep();
        room.gauge = false;
    }

    function openClose() {
        room.leaveSkip();
        room.leaveGauge();
        room.hands = false;
        room.closing = true;
        room.close.open();
    }

    function leaveSkip() {
        room.skipping = false;
        room.skipTo = -1;
    }

    whereLine: qsTr("%1 · %2 · %3").arg(walk.siteName).arg(walk.runName).arg(walk.personWords)
    keptLine: walk.writable ? qsTr("%1 · %2").arg(walk.keptCaption).arg(walk.keptWords) : walk.keptCaption
    cells: WalkCells {
        walk: room.walk
        portrait: room.portrait
        lined: room.lined
        closing: room.closing ? room.close.cellWords : ""
        onHandsWanted: {
            room.closing = false;
            room.leaveGauge();
            room.hands = !room.hands;
        }
        onGaugeWanted: room.gauge ? room.leaveGauge() : room.openGauge()
    }

    Keys.onPressed: event => {
        if (room.closing) {
            if (event.key === Qt.Key_Escape)
                room.closing = false;
        } else if (event.key === Qt.Key_Escape && room.gauge)
            room.leaveGauge();
        else if (!room.skipping)
            event.accepted = keyboard.take(event.key, event.text, event.modifiers);
        else if (event.key === Qt.Key_Escape)
            room.leaveSkip();
    }

    Connections {
        target: room.walk

        function onPadChanged() {
            if (room.walk.shown)
                return;
            room.leaveSkip();
            room.closing = false;
        }
    }

    Connections {
        target: room.walk.check

        function onClosed() {
            room.gauge = false;
        }
    }

    WalkKeyboard {
        id: keyboard

        walk: room.walk
    }

    InkText {
        objectName: "noRun"
        visible: !room.walk.opened
        anchors.centerIn: parent
        width: Math.min(parent.width - Tokens.pageMargin * 2, Tokens.padWidth * 2)
        text: room.walk.message !== "" ? room.walk.message : qsTr("No rail is drawn yet. Registers come from a file: kneerail import.")
        font.pixelSize: Tokens.keyText
        horizontalAlignment: Text.AlignHCenter
        wrapMode: Text.Wrap
    }

    WalkDrawing {
        id: drawing

        visible: room.walk.opened
        x: room.portrait || !Tokens.leftHanded ? 0 : pad.width
        width: room.portrait ? room.width : room.width - pad.width
        height: room.portrait ? room.height - pad.height : room.height
        walk: room.walk
        portrait: room.portrait
        skipping: room.skipping
        skipTo: room.skipTo
        onStretchDragged: post => room.skipTo = post
        onPalmSeen: pad.rest()
    }

    WalkPad {
        id: pad

        visible: room.walk.opened
        x: room.portrait || Tokens.leftHanded ? 0 : room.width - width
        y: room.portrait ? room.height - height : 0
        width: room.portrait || room.width < Tokens.narrowWindow ? room.width : Tokens.padWidth
        height: room.portrait ? Math.min(Tokens.portraitPadHeight, room.height / 2) : room.height
        walk: room.walk
        portrait: room.portrait
        skipping: room.skipping
        skipTo: room.skipTo
        hands: room.hands
        gauge: room.gauge
        onGaugeLeft: room.leaveGauge()
        onHandsWanted: {
            room.leaveGauge();
            room.hands = true;
        }
        onHandsLeft: room.hands = false
        onCloseWanted: room.openClose()
        onSkipWanted: room.skipping = true
        onSkipLeft: room.leaveSkip()
        onSkipBecause: reason => {
            room.walk.skip(reason, room.skipTo < 0 ? room.walk.run.post : room.skipTo);
            room.leaveSkip();
        }
    }

    MadeOnce {
        shown: room.closing

        CloseVisit {
            objectName: "closeVisit"
            anchors.fill: parent
            visit: room.close
            portrait: room.portrait
            onGone: room.closing = false
        }
    }
}
