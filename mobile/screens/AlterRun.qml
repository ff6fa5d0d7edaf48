// A run that stands, to be changed: touch a bay or a post, say what becomes of it, and keep that.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

FocusScope {
    id: page

    required property ChangedRun change
    property bool portrait: false
    readonly property bool padUp: change.asks
    readonly property real drawingWidth: padUp && !portrait ? width - pad.width : width

    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Change %1").arg(page.change.runName)
    Keys.onPressed: event => event.accepted = keyboard.take(event.key)

    AlterKeyboard {
        id: keyboard

        change: page.change
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    MouseArea {
        anchors.fill: parent
    }

    Tape {
        id: tape

        x: view.x
        width: page.drawingWidth
        height: Tokens.tapeHeight
        view: view
    }

    ElevationView {
        id: view

        objectName: "elevation"
        x: page.padUp && !page.portrait && Tokens.leftHanded ? pad.width : 0
        anchors.top: tape.bottom
        width: page.drawingWidth
        height: (line.visible ? line.y : pad.y) - y
        clip: true
        picture: page.change.run
        deckMargin: Tokens.portraitDeckMargin
        onPartTouched: part => page.change.choosePart(part)
        onPartHeld: part => page.change.choosePart(part)
        onPostTouched: post => page.change.choosePost(post)
        onBayTouched: bay => page.change.chooseBay(bay)
        onSwiped: step => page.change.stepPost(step)
    }

    RunLine {
        id: line

        visible: !page.padUp || !page.portrait
        x: view.x
        y: foot.y - height
        width: page.drawingWidth
        picture: page.change.run
        view: view
        onPostTouched: post => page.change.choosePost(post)
    }

    Rectangle {
        id: foot

        visible: line.visible
        x: view.x
        y: page.height - height
        width: page.drawingWidth
        height: page.portrait ? Tokens.touchTarget * 2 + Tokens.inset * 2 : Tokens.touchTarget + Tokens.inset * 2
        color: Tokens.shade

        Rectangle {
            width: parent.width
            height: Tokens.keyEdge
            color: Tokens.edge
        }

        Column {
            x: Tokens.margin
            y: page.portrait ? Tokens.inset : (foot.height - height) / 2
            width: (page.portrait ? foot.width : acts.x) - x - Tokens.inset

            InkText {
                objectName: "changeSentence"
                width: parent.width
                text: page.change.sentence
                bold: true
                font.pixelSize: Tokens.bodyText
                elide: Text.ElideRight
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }

            InkText {
                width: parent.width
                text: page.change.means
                color: Tokens.ink2
                font.pixelSize: Tokens.smallText
                wrapMode: Text.Wrap
                maximumLineCount: 2
                elide: Text.ElideRight
            }
        }

        Row {
            id: acts

            x: foot.width - width - Tokens.margin
            y: foot.height - height - Tokens.inset
            spacing: Tokens.gap

            OctagonKey {
                objectName: "leaveChange"
                height: Tokens.touchTarget
                text: qsTr("Back")
                textSize: Tokens.labelText
                onClicked: page.change.leave()
            }

            OctagonKey {
                objectName: "takeBackChange"
                visible: page.change.canKeep
                height: Tokens.touchTarget
                text: qsTr("Undo")
                textSize: Tokens.labelText
                onClicked: page.change.takeBack()
            }

            OctagonKey {
                objectName: "keepChange"
                visible: page.change.canKeep
                width: Tokens.digitKeyWidth * 1.7
                height: Tokens.touchTarget
                look: KeyFace.Act
                text: qsTr("Keep the change")
                textSize: Tokens.labelText
                onClicked: page.change.keep()
            }
        }
    }

    MessageBar {
        objectName: "changeMessage"
        x: view.x + Tokens.inset
        width: page.drawingWidth - Tokens.inset * 2
        y: (line.visible ? line.y : pad.y) - height - Tokens.gap
        text: page.change.message
        canTryAgain: page.change.notKept
        onTryAgain: page.change.keep()
        onPutAway: page.change.dismissMessage()
    }

    Item {
        id: pad

        visible: page.padUp
        x: page.portrait || Tokens.leftHanded ? 0 : page.width - width
        y: page.portrait ? page.height - height : 0
        width: page.portrait ? page.width : Tokens.padWidth
        height: page.portrait ? Math.min(Tokens.portraitPadHeight, page.height / 2) : page.height

        MadeOnce {
            shown: page.padUp

            AskedKeys {
                anchors.fill: pad
                sentence: page.change
                portrait: page.portrait
            }
        }
    }
}
