// Close a visit: every run with what was not reached, counts and grades, what is asked before the seal, and the seal.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Rectangle {
    id: close

    required property VisitClose visit
    property bool portrait: false

    signal gone

    color: Tokens.paper
    Accessible.role: Accessible.Pane
    Accessible.name: close.visit.cellWords

    // What is under it is not touched through it.
    MouseArea {
        anchors.fill: parent
    }

    Flickable {
        id: sheet

        x: (close.portrait || !Tokens.leftHanded ? 0 : pad.width) + Tokens.pageMargin
        y: Tokens.margin
        width: (close.portrait ? parent.width : parent.width - pad.width) - Tokens.pageMargin * 2
        height: (close.portrait ? pad.y : parent.height) - y
        contentHeight: page.height + Tokens.margin
        interactive: contentHeight > height
        clip: interactive

        Column {
            id: page

            width: parent.width
            spacing: Tokens.gap

            InkText {
                objectName: "closeTitle"
                width: parent.width
                text: close.visit.title
                bold: true
                font.pixelSize: Tokens.gradeText
                wrapMode: Text.Wrap
            }

            InkText {
                width: parent.width
                text: close.visit.about
                color: Tokens.ink2
                wrapMode: Text.Wrap
            }

            Flow {
                width: parent.width
                spacing: Tokens.gap

                Repeater {
                    model: close.visit

                    ClosedRun {
                        width: Math.min(page.width, Math.max(leastWidth, page.width * picture.posts / close.visit.mostPosts))
                    }
                }
            }

            CloseFigures {
                visible: close.visit.known
                width: parent.width
                visit: close.visit
            }

            InkText {
                visible: close.visit.known
                text: qsTr("Asks before sealing")
                bold: true
            }

            Repeater {
                model: close.visit.asks.length

                Item {
                    id: ask

                    required property int index
                    readonly property int sign: close.visit.askSigns[index] ?? VisitClose.NoSign

                    width: page.width
                    height: Math.max(words.height, Tokens.signHeight * 0.8) + Tokens.smallGap

                    KeySign {
                        visible: ask.sign === VisitClose.Board
                        anchors.verticalCenter: parent.verticalCenter
                        width: Tokens.signWidth
                        height: Tokens.signHeight
                        kind: KeySign.Board
                        ink: Tokens.tapeInk
                        chalkLight: Tokens.tape
                    }

                    GradeGlyph {
                        visible: ask.sign === VisitClose.Hollow
                        x: (Tokens.signWidth - width) / 2
                        anchors.verticalCenter: parent.verticalCenter
                        radius: Tokens.signHeight * 0.35
                        grade: 0
                        ground: false
                    }

                    InkText {
                        id: words

                        x: Tokens.signWidth + Tokens.margin
                        anchors.verticalCenter: parent.verticalCenter
                        width: parent.width - x
                        text: close.visit.asks[ask.index]
                        color: ask.sign === VisitClose.NoSign ? Tokens.ink2 : Tokens.ink
                        font.pixelSize: ask.sign === VisitClose.NoSign ? Tokens.smallText : Tokens.bodyText
                        wrapMode: Text.Wrap
                        Accessible.role: Accessible.StaticText
                        Accessible.name: text
                    }
                }
            }
        }
    }

    Rectangle {
        id: pad

        x: close.portrait || Tokens.leftHanded ? 0 : parent.width - width
        y: close.portrait ? parent.height - height : 0
        width: close.portrait ? parent.width : Tokens.padWidth
        height: close.portrait ? Math.min(Tokens.portraitPadHeight, parent.height / 2) : parent.height
        color: Tokens.shade

        Rectangle {
            width: close.portrait ? parent.width : Tokens.keyEdge
            height: close.portrait ? Tokens.keyEdge : parent.height
            color: Tokens.edge
        }

        CloseSigning {
            anchors.fill: parent
            anchors.margins: Tokens.margin
            visit: close.visit
            portrait: close.portrait
            onGone: close.gone()
        }
    }
}
