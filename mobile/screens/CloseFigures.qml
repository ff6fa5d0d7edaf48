// The counts of a visit: four figures with their words, and how many parts got each grade.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: counts

    required property VisitClose visit

    spacing: Tokens.gap

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.ink
    }

    Grid {
        id: figures

        width: parent.width
        columns: width < Tokens.padWidth * 1.5 ? 2 : 4
        rowSpacing: Tokens.gap

        Repeater {
            model: counts.visit.figures.length

            Column {
                id: figure

                required property int index
                readonly property string words: counts.visit.figureWords[index] ?? ""

                width: counts.width / figures.columns
                Accessible.role: Accessible.StaticText
                Accessible.name: qsTr("%1 %2").arg(counts.visit.figures[index]).arg(words)

                InkText {
                    text: counts.visit.figures[figure.index]
                    bold: true
                    font.pixelSize: Tokens.figureText
                }

                InkText {
                    width: parent.width - Tokens.gap
                    text: figure.words
                    color: Tokens.ink2
                    font.pixelSize: Tokens.smallText
                    wrapMode: Text.Wrap
                }
            }
        }
    }

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge / 2
        color: Tokens.line
    }

    Row {
        id: graded

        width: parent.width
        height: Tokens.signHeight * 1.6

        InkText {
            id: heading

            anchors.verticalCenter: parent.verticalCenter
            width: implicitWidth + Tokens.margin
            text: qsTr("Grades")
            bold: true
        }

        Repeater {
            model: counts.visit.grades.length

            Item {
                id: count

                required property int index

                width: (counts.width - heading.width) / 5
                height: graded.height
                Accessible.role: Accessible.StaticText
                Accessible.name: qsTr("%1 at grade %2").arg(counts.visit.grades[index]).arg(index + 1)

                GradeGlyph {
                    id: glyph

                    anchors.verticalCenter: parent.verticalCenter
                    radius: Tokens.signHeight / 2
                    grade: count.index + 1
                    ground: false
                }

                InkText {
                    anchors.left: glyph.right
                    anchors.leftMargin: Tokens.gap
                    anchors.verticalCenter: parent.verticalCenter
                    text: qsTr("%L1").arg(counts.visit.grades[count.index])
                    bold: true
                    font.pixelSize: Tokens.keyText
                }
            }
        }
    }

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge / 2
        color: Tokens.line
    }
}
