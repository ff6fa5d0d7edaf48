// The middle of Walk: tape, elevation with the note and its leader, run line, and what could not be kept.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: drawing

    required property WalkModel walk
    property bool portrait: false
    property bool skipping: false
    property int skipTo: -1

    signal palmSeen
    signal stretchDragged(post: int)

    Tape {
        id: tape

        view: view
        width: parent.width
        height: Tokens.tapeHeight
    }

    ElevationView {
        id: view

        objectName: "elevation"
        anchors.top: tape.bottom
        anchors.bottom: line.top
        width: parent.width
        picture: drawing.walk.run
        thumbSide: Tokens.leftHanded ? Qt.LeftEdge : Qt.RightEdge
        onPartTouched: part => {
            if (drawing.skipping)
                drawing.stretchDragged(drawing.walk.postOfPart(part));
            else
                drawing.walk.choosePart(part);
        }
        onPostTouched: post => {
            if (drawing.skipping)
                drawing.stretchDragged(post);
            else
                drawing.walk.choosePost(post);
        }
        onBayTouched: (bay, alongMm, upMm) => {
            if (!drawing.skipping)
                drawing.walk.touchBay(bay, alongMm, upMm);
        }
        onPartHeld: part => {
            if (drawing.skipping)
                return;
            drawing.walk.choosePart(part);
            drawing.walk.askForecast();
        }
        onPalmSeen: drawing.palmSeen()
        onSwiped: step => {
            if (!drawing.skipping)
                drawing.walk.stepPost(step);
        }

        Binding {
            target: view
            property: "deckMargin"
            value: drawing.portrait ? Tokens.portraitDeckMargin : Tokens.coatingDeckMargin
            when: drawing.portrait || note.coating || note.bay
        }
    }

    InkText {
        id: lastVisit

        visible: drawing.walk.pad === WalkModel.PostPad && !view.moving && !drawing.skipping
        x: view.chosenRect.right + Tokens.inset
        y: view.y + view.chosenRect.top - height / 4
        text: drawing.walk.postLastVisit
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    InkText {
        visible: lastVisit.visible
        x: lastVisit.x
        y: view.y + view.chosenRect.bottom - height - (view.chosenRect.height - height) * 0.34
        text: drawing.walk.postLastReadings
        color: Tokens.ink2
        font.pixelSize: Tokens.smallText
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }

    Leader {
        visible: note.visible && !note.checking && view.hasChosen
        from: Qt.point(note.x + note.width * 0.375, note.y + note.height)
        to: Qt.point(view.x + view.chosenPoint.x, view.y + view.chosenPoint.y)
        ink: Tokens.chalk
        stroke: Tokens.noteStroke
    }

    WalkNote {
        id: note

        x: Tokens.inset
        y: tape.height + Tokens.smallGap
        width: parent.width - Tokens.inset * 2
        walk: drawing.walk
        portrait: drawing.portrait
        skipping: drawing.skipping
    }

    Rectangle {
        anchors.fill: line
        color: Tokens.sheet

        Rectangle {
            width: parent.width
            height: Tokens.keyEdge
            color: Tokens.edge
        }
    }

    RunLine {
        id: line

        objectName: "runLine"
        anchors.bottom: parent.bottom
        width: parent.width
        picture: drawing.walk.run
        view: view
        stretchFrom: drawing.skipping ? drawing.walk.run.post : -1
        stretchTo: drawing.skipping ? (drawing.skipTo < 0 ? drawing.walk.run.post : drawing.skipTo) : -1
        onDraggedTo: post => {
            if (drawing.skipping)
                drawing.stretchDragged(post);
        }
        onPostTouched: post => {
            if (!drawing.skipping)
                drawing.walk.choosePost(post);
        }
    }

    MadeOnce {
        shown: drawing.walk.pad === WalkModel.FindingPad

        FindingPicture {
            visible: drawing.walk.pad === WalkModel.FindingPad && !drawing.skipping
            anchors.fill: drawing
            walk: drawing.walk
        }
    }

    MessageBar {
        id: message

        objectName: "messageBar"
        anchors.bottom: line.top
        anchors.bottomMargin: Tokens.gap
        x: Tokens.inset
        width: parent.width - Tokens.inset * 2
        text: drawing.walk.message
        canTryAgain: drawing.walk.notKept
        onTryAgain: drawing.walk.tryAgain()
        onPutAway: drawing.walk.dismissMessage()
    }

    InkBar {
        id: takenBack

        anchors.bottom: message.visible ? message.top : line.top
        anchors.bottomMargin: Tokens.gap
        x: Tokens.inset
        width: Math.min(parent.width - Tokens.inset * 2, Tokens.padWidth)
        readonly property string puts: drawing.walk.redoWords

        act: qsTr("Redo")
        onUndone: drawing.walk.redo()
        onPutsChanged: takenBack.hide()
    }

    InkBar {
        id: thrown

        anchors.bottom: takenBack.visible ? takenBack.top : message.visible ? message.top : line.top
        anchors.bottomMargin: Tokens.gap
        x: Tokens.inset
        width: Math.min(parent.width - Tokens.inset * 2, Tokens.padWidth)
        onUndone: drawing.walk.undo()
    }

    Connections {
        target: drawing.walk

        function onThrownAway(words: string) {
            thrown.show(qsTr("%1 thrown away").arg(words), "");
        }

        function onTakenBack(words: string, inLog: bool) {
            thrown.hide();
            takenBack.show(qsTr("%1 taken back").arg(words), inLog ? qsTr("both stay in the log") : "");
        }
    }
}
