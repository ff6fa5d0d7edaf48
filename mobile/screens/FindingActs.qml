// What an open finding is asked: whether what was done still stands, what more was done, and what is next.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: acts

    required property FindingsModel findings
    property string undoes
    property bool portrait: false
    readonly property real inner: width - Tokens.margin * 2
    readonly property int weekDays: 7
    readonly property int monthDays: 30

    signal undo

    color: Tokens.shade

    Rectangle {
        width: acts.portrait ? parent.width : Tokens.keyEdge
        height: acts.portrait ? Tokens.keyEdge : parent.height
        color: Tokens.edge
    }

    Flickable {
        x: Tokens.margin
        y: Tokens.inset
        width: acts.inner
        height: back.y - y - Tokens.gap
        contentHeight: list.height
        interactive: contentHeight > height
        clip: interactive

        Column {
            id: list

            width: parent.width
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
                width: parent.width
                text: acts.findings.nextWords === "" ? acts.findings.doneWords : qsTr("%1\n%2").arg(acts.findings.doneWords).arg(acts.findings.nextWords)
                bold: acts.findings.boarded
                font.pixelSize: Tokens.smallText
                wrapMode: Text.Wrap
                Accessible.role: Accessible.StaticText
                Accessible.name: text
            }

            NamedKeys {
                visible: acts.findings.asksWhetherItStands && acts.findings.writes
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

                visible: acts.findings.boarded && acts.findings.writes
                width: parent.width
                caption: qsTr("What more was done? The last three are not safe by themselves.")
                named: "done"
                names: [qsTr("Closed off"), qsTr("Propped"), qsTr("Guarded"), qsTr("Taped"), qsTr("Closed below"), qsTr("Reported")]
                columns: acts.portrait ? 6 : 3
                textSize: Tokens.smallText
                captionSize: Tokens.smallText
                onChosen: place => acts.findings.addMeasure(codes[place])
            }

            NamedKeys {
                readonly property list<int> steps: [1, 2, 3, 3, 4, 5]

                visible: acts.findings.writes
                width: parent.width
                caption: qsTr("What is next?")
                named: "next"
                names: [qsTr("Watch"), qsTr("Measure next visit"), qsTr("Mend in a week"), qsTr("Mend in a month"), qsTr("Order"), qsTr("Ask an engineer")]
                now: acts.findings.nextStep === 3 ? -1 : acts.findings.nextStep < 3 ? acts.findings.nextStep - 1 : acts.findings.nextStep
                columns: 3
                textSize: Tokens.smallText
                captionSize: Tokens.smallText
                onChosen: place => acts.findings.setNext(steps[place], place === 2 ? acts.weekDays : acts.monthDays)
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
        objectName: "walkThere"
        x: back.x + (back.width + Tokens.gap) * 2
        y: back.y
        width: back.width
        height: back.height
        look: KeyFace.Act
        text: qsTr("Walk there")
        textSize: Tokens.labelText
        onClicked: acts.findings.walkThere()
    }
}
