// A run laid out as a sentence: its keys, the drawing that follows them, the pad of what is asked, and what is kept in the end.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

FocusScope {
    id: page

    required property RunSentence sentence
    property bool portrait: false
    readonly property bool padUp: sentence.asks
    readonly property real drawingWidth: padUp && !portrait ? width - pad.width : width
    readonly property real belowKeys: keys.y + keys.height + Tokens.inset

    function fit() {
        const room = view.height - Tokens.portraitDeckMargin - Tokens.touchTarget;
        view.scaleDenominator = page.sentence.scaleFor(room / Tokens.pixelsPerMm);
    }

    /// The run from its beginning.
    function begin() {
        page.fit();
        view.centreChainage = page.sentence.centreFor(view.rightChainage - view.leftChainage);
    }

    Keys.onPressed: event => event.accepted = keyboard.take(event.key, event.modifiers)
    Accessible.role: Accessible.Pane
    Accessible.name: qsTr("Lay out a run by rule")

    RuleKeyboard {
        id: keyboard

        sentence: page.sentence
    }

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    MouseArea {
        anchors.fill: parent
    }

    SentenceKeys {
        id: keys

        x: Tokens.margin
        y: Tokens.inset
        width: page.width - Tokens.margin * 2
        pieces: page.sentence.pieces
        spoken: qsTr("The run as a sentence. %1").arg(page.sentence.countWords)
        onChosen: piece => page.sentence.choosePiece(piece)
    }

    InkText {
        id: whole

        visible: line.visible && page.height > Tokens.padWidth * 2
        x: Tokens.margin
        y: page.belowKeys
        text: page.sentence.lengthWords
        bold: true
        font.pixelSize: Tokens.smallText
    }

    RunLine {
        id: line

        objectName: "ruleLine"
        visible: !page.padUp || !page.portrait
        x: page.padUp && Tokens.leftHanded ? pad.width : 0
        y: whole.y + (whole.visible ? whole.height : 0)
        width: page.drawingWidth
        picture: page.sentence.run
        view: view
        onPostTouched: post => page.sentence.choosePost(post)
    }

    Tape {
        id: tape

        x: line.x
        y: line.visible ? line.y + line.height : page.belowKeys
        width: page.drawingWidth
        height: Tokens.tapeHeight
        view: view
    }

    ElevationView {
        id: view

        objectName: "elevation"
        x: line.x
        y: tape.y + tape.height
        width: page.drawingWidth
        height: (page.portrait && page.padUp ? pad.y : foot.y) - y
        clip: true
        picture: page.sentence.run
        deckMargin: Tokens.portraitDeckMargin
        onHeightChanged: page.fit()
        onWidthChanged: if (page.sentence.run.post < 0)
            page.begin()
        onPartTouched: part => page.sentence.choosePart(part)
        onPartHeld: part => page.sentence.choosePart(part)
        onPostTouched: post => page.sentence.choosePost(post)
        onBayTouched: bay => page.sentence.chooseBay(bay)
        onSwiped: step => page.sentence.stepPost(step)
    }

    Connections {
        target: page.sentence

        function onDrawn() {
            page.begin();
        }
    }

    RuleFoot {
        id: foot

        visible: !page.padUp || !page.portrait
        x: line.x
        y: page.height - height
        width: page.drawingWidth
        sentence: page.sentence
        portrait: page.portrait
        narrow: page.padUp && !page.portrait
    }

    MessageBar {
        objectName: "ruleMessage"
        x: line.x + Tokens.inset
        width: page.drawingWidth - Tokens.inset * 2
        y: (page.portrait && page.padUp ? pad.y : foot.y) - height - Tokens.gap
        text: page.sentence.message
        canTryAgain: page.sentence.notKept
        onTryAgain: page.sentence.keep()
        onPutAway: page.sentence.dismissMessage()
    }

    Item {
        id: pad

        visible: page.padUp
        x: page.portrait || Tokens.leftHanded ? 0 : page.width - width
        y: page.portrait ? page.height - height : page.belowKeys
        width: page.portrait ? page.width : Tokens.padWidth
        height: page.portrait ? Math.min(Tokens.portraitPadHeight, page.height / 2) : page.height - y

        MadeOnce {
            shown: page.padUp

            AskedKeys {
                anchors.fill: pad
                sentence: page.sentence
                portrait: page.portrait
            }
        }
    }
}
