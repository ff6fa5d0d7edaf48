// What an open finding is asked, one question at a time: whether what was done still stands, what more was done, what is next, what ended it.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: acts

    required property FindingsModel findings
    property string undoes
    property bool portrait: false
    readonly property real inner: width - Tokens.margin * 2
    /// Places of the questions; -1: the one that comes first by how the finding stands.
    property int asked: -1
    readonly property int first: !findings.boarded ? 2 : findings.notHeld ? 1 : 0
    readonly property int question: asked >= 0 ? asked : first
    readonly property bool ends: question === 3

    signal undo

    function ask(question: int) {
        acts.asked = question;
    }

    color: Tokens.shade

    Connections {
        target: acts.findings

        function onOpenedFinding() {
            acts.asked = -1;
        }
    }

    Rectangle {
        width: acts.portrait ? parent.width : Tokens.keyEdge
        height: acts.portrait ? Tokens.keyEdge : parent.height
        color: Tokens.edge
    }

    Column {
        id: head

        x: Tokens.margin
        y: Tokens.inset
        width: acts.inner
        spacing: Tokens.gap * 0.75

        Row {
            width: parent.width
            spacing: Tokens.inset

            GradeGlyph {
                radius: Tokens.glyphInList
                width: radius * 2.2
                height: width
                grade: acts.findings.grade
                ground: false
            }

            Column {
                width: parent.width - Tokens.glyphInList * 2.2 - Tokens.inset

                InkText {
                    objectName: "openTitle"
                    width: parent.width
                    text: acts.findings.title
                    bold: true
                    wrapMode: Text.Wrap
                }

                InkText {
                    width: parent.width
                    text: acts.findings.saidWords === "" ? qsTr("grade %1 · %2").arg(acts.findings.grade).arg(acts.findings.kindWords) : qsTr("grade %1 · %2 · %3").arg(acts.findings.grade).arg(acts.findings.kindWords).arg(acts.findings.saidWords)
                    color: Tokens.ink2
                    font.pixelSize: Tokens.smallText
                    wrapMode: Text.Wrap
                    maximumLineCount: acts.ends ? 1 : 3
                    elide: Text.ElideRight
                }
            }
        }

        FindingSign {
            visible: acts.findings.boarded
            x: -Tokens.margin
            width: acts.width
            height: Tokens.barrierHeight
            kind: FindingSign.Board
            ink: Tokens.edge
            tape: Tokens.tape
            tapeInk: Tokens.tapeInk
        }

        InkText {
            objectName: "openDone"
            visible: !acts.ends
            width: parent.width
            text: acts.findings.standsWords
            bold: acts.findings.boarded
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
            Accessible.role: Accessible.StaticText
            Accessible.name: text
        }

        OctagonKey {
            objectName: "readIt"
            visible: acts.findings.asksToRead && !acts.ends
            width: parent.width
            height: Tokens.touchTarget
            text: qsTr("I have read this")
            textSize: Tokens.labelText
            onClicked: acts.findings.readIt()
        }

        Row {
            id: questions

            visible: acts.findings.writes && !acts.findings.ended
            width: parent.width
            spacing: Tokens.gap * 0.75

            Repeater {
                model: [qsTr("Stands?"), qsTr("Done"), qsTr("Next"), qsTr("End it")]

                OctagonKey {
                    required property int index
                    required property string modelData

                    objectName: "ask" + index
                    visible: index > 1 || (acts.findings.boarded && (index === 1 || acts.findings.asksWhetherItStands))
                    width: (questions.width - questions.spacing * 3) / 4
                    height: Tokens.touchTarget
                    look: acts.question === index ? KeyFace.Chosen : KeyFace.Plain
                    text: modelData
                    textSize: Tokens.bodyText
                    onClicked: acts.ask(index)
                }
            }
        }
    }

    Flickable {
        x: Tokens.margin
        y: head.y + head.height + Tokens.margin
        width: acts.inner
        height: back.y - y - Tokens.gap
        visible: acts.findings.writes && !acts.findings.ended
        contentHeight: list.height
        interactive: contentHeight > height
        clip: interactive

        Column {
            id: list

            width: parent.width
            spacing: Tokens.gap

            NamedKeys {
                visible: acts.question === 0
                width: parent.width
                caption: qsTr("Does it still stand?")
                named: "stands"
                names: [qsTr("In place"), qsTr("Put back"), qsTr("Gone")]
                columns: 3
                textSize: Tokens.bodyText
                captionSize: Tokens.smallText
                onChosen: place => acts.findings.looked(place + 1)
            }

            NamedKeys {
                readonly property list<int> codes: [1, 2, 6, 3, 7, 5]

                visible: acts.question === 1
                width: parent.width
                caption: qsTr("What more was done? The last three are not safe by themselves.")
                named: "done"
                names: [qsTr("Closed off"), qsTr("Propped"), qsTr("Guarded"), qsTr("Taped"), qsTr("Closed below"), qsTr("Reported")]
                columns: acts.portrait ? 6 : 3
                textSize: Tokens.smallText
                captionSize: Tokens.smallText
                onChosen: place => acts.findings.addMeasure(codes[place])
            }

            FindingNext {
                visible: acts.question === 2
                width: parent.width
                findings: acts.findings
            }

            MadeOnce {
                shown: acts.ends

                FindingEnd {
                    width: list.width
                    ending: acts.findings.ending
                    portrait: acts.portrait
                }
            }
        }
    }

    OctagonKey {
        id: back

        objectName: "closeFinding"
        x: Tokens.margin
        y: parent.height - height - Tokens.margin
        width: (acts.inner - Tokens.gap * 2) / 3
        height: Tokens.touchTarget
        text: qsTr("Back")
        textSize: Tokens.labelText
        onClicked: acts.findings.close()
    }

    OctagonKey {
        objectName: "undoFinding"
        x: back.x + back.width + Tokens.gap
        y: back.y
        width: back.width
        height: back.height
        text: qsTr("Undo")
        textSize: Tokens.labelText
        secondTextSize: Tokens.captionText
        secondLine: acts.undoes
        enabled: acts.undoes !== "" && acts.findings.writes
        onClicked: acts.undo()
    }

    OctagonKey {
        objectName: acts.ends ? "endIt" : "walkThere"
        x: back.x + (back.width + Tokens.gap) * 2
        y: back.y
        width: back.width
        height: back.height
        look: KeyFace.Act
        enabled: !acts.ends || acts.findings.ending.missing === ""
        text: acts.ends ? qsTr("End it") : qsTr("Walk there")
        textSize: Tokens.labelText
        onClicked: acts.ends ? acts.findings.ending.end() : acts.findings.walkThere()
    }
}
