// What cannot wait: what was done about it. The three that hold people back stand in the upper row. Or why it can wait, in a sentence.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: safe

    required property FindingPen finding
    property bool boarded: false
    readonly property bool writing: finding.writesWhy
    readonly property bool waits: finding.whyItCanWait !== ""
    readonly property real row: (height - head.y - head.height - below.height - said.height - Tokens.gap * 3 - Tokens.smallGap) / 2
    readonly property real third: (width - Tokens.gap * 1.5) / 3

    FindingSign {
        id: board

        visible: safe.boarded
        kind: FindingSign.Board
        ink: Tokens.edge
        tape: Tokens.tape
        tapeInk: Tokens.tapeInk
        width: parent.width
        height: safe.boarded ? Tokens.barrierHeight : 0
    }

    Item {
        id: head

        y: safe.boarded ? board.height + Tokens.gap : 0
        width: parent.width
        height: Tokens.touchTarget

        InkText {
            anchors.verticalCenter: parent.verticalCenter
            width: parent.width - canWait.width - Tokens.gap
            text: qsTr("This cannot wait. What did you do?")
            bold: true
            wrapMode: Text.Wrap
            maximumLineCount: 2
            fontSizeMode: Text.Fit
            height: parent.height
            verticalAlignment: Text.AlignVCenter
            minimumPixelSize: Tokens.captionText
            font.pixelSize: Tokens.labelText
        }

        OctagonKey {
            id: canWait

            objectName: "itCanWait"
            anchors.right: parent.right
            width: safe.width * 0.42
            height: parent.height
            look: safe.waits || safe.writing ? KeyFace.Chosen : KeyFace.Plain
            text: qsTr("It can wait")
            textSize: Tokens.bodyText
            secondTextSize: Tokens.captionText
            secondLine: qsTr("%1 says why").arg(safe.finding.writer)
            onClicked: safe.writing ? safe.finding.itCanWait(safe.finding.typedWhy) : safe.finding.writeWhy()
        }
    }

    Grid {
        id: upper

        visible: !safe.writing
        y: head.y + head.height + Tokens.gap
        columns: 3
        spacing: Tokens.gap * 0.75

        MeasureKey {
            finding: safe.finding
            measure: 1
            drawn: FindingSign.ClosedOff
            width: safe.third
            height: safe.row
            text: qsTr("Closed off")
        }

        MeasureKey {
            finding: safe.finding
            measure: 2
            drawn: FindingSign.Propped
            width: safe.third
            height: safe.row
            text: qsTr("Propped")
        }

        MeasureKey {
            finding: safe.finding
            measure: 6
            drawn: FindingSign.Guarded
            width: safe.third
            height: safe.row
            text: qsTr("Guarded")
        }
    }

    InkText {
        id: below

        visible: !safe.writing
        y: upper.y + upper.height + Tokens.smallGap / 2
        text: qsTr("not safe by itself")
        color: Tokens.ink2
        font.pixelSize: Tokens.captionText
    }

    Grid {
        visible: !safe.writing
        y: below.y + below.height + Tokens.smallGap / 2
        columns: 3
        spacing: Tokens.gap * 0.75

        MeasureKey {
            finding: safe.finding
            measure: 3
            drawn: FindingSign.Taped
            width: safe.third
            height: safe.row
            text: qsTr("Taped")
        }

        MeasureKey {
            finding: safe.finding
            measure: 7
            drawn: FindingSign.ClosedBelow
            width: safe.third
            height: safe.row
            text: qsTr("Closed below")
        }

        MeasureKey {
            finding: safe.finding
            measure: 5
            drawn: FindingSign.Reported
            width: safe.third
            height: safe.row
            text: qsTr("Reported")
        }
    }

    MadeOnce {
        shown: safe.writing

        SentenceField {
            id: why

            objectName: "whyItCanWait"
            visible: safe.writing
            y: head.y + head.height + Tokens.gap
            width: safe.width
            height: said.y - Tokens.gap - why.y
            caption: qsTr("Why it can wait, in a sentence")
            most: safe.finding.whyMost
            text: safe.finding.typedWhy
            onTyped: text => safe.finding.typeWhy(text)
            onSaid: text => safe.finding.itCanWait(text)
            onGivenUp: safe.finding.leaveWhy()
        }
    }

    InkText {
        id: said

        objectName: "safeWords"
        y: parent.height - height
        width: parent.width
        height: font.pixelSize * 3.8
        text: safe.finding.lookAgainWords === "" ? safe.finding.safeWords : qsTr("%1 · %2").arg(safe.finding.safeWords).arg(safe.finding.lookAgainWords)
        bold: !safe.finding.safe && !safe.waits
        color: safe.finding.safe || safe.waits ? Tokens.ink2 : Tokens.rust
        font.pixelSize: Tokens.captionText
        verticalAlignment: Text.AlignBottom
        wrapMode: Text.Wrap
        maximumLineCount: 3
        elide: Text.ElideRight
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
}
