// Before the first walk and whenever it is asked: the cautions, and how this screen looks in its person's hands.
import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property ThisTablet tablet
    readonly property bool first: !tablet.cautionsRead
    readonly property real columnWidth: portrait ? width - Tokens.pageMargin * 2 : (width - Tokens.pageMargin * 4) / 2

    signal done

    function goOn(left: bool) {
        Tokens.leftHanded = left;
        room.tablet.readCautions();
        room.done();
    }

    whereLine: qsTr("This tablet")

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    DrawnRail {
        visible: room.first
        x: Tokens.pageMargin
        y: page.height - height - Tokens.pageMargin
        width: parent.width - Tokens.pageMargin * 2
        height: Math.min(page.height - page.contentHeight, Tokens.cardWidth / 2)
        posts: room.portrait ? 5 : 8
    }

    Flickable {
        id: page

        anchors.fill: parent
        contentHeight: columns.height + Tokens.pageMargin * 2
        interactive: contentHeight > height
        boundsBehavior: Flickable.StopAtBounds
        clip: interactive

        Grid {
            id: columns

            x: Tokens.pageMargin
            y: Tokens.pageMargin
            columns: room.portrait ? 1 : 2
            spacing: Tokens.pageMargin * (room.portrait ? 1 : 2)

            Column {
                width: room.columnWidth
                spacing: Tokens.margin

                InkText {
                    width: parent.width
                    text: qsTr("Kneerail")
                    bold: true
                    font.pixelSize: Tokens.figureText
                }

                Cautions {
                    objectName: "cautions"
                    width: parent.width
                    sentences: room.tablet.cautions
                    spoken: room.tablet.cautionWords
                }

                AboutTablet {
                    width: parent.width
                    visible: !room.first
                    lines: room.tablet.about
                }
            }

            FirstHand {
                width: room.columnWidth
                visible: room.first
                onChosen: leftHanded => room.goOn(leftHanded)
            }

            TabletLooks {
                width: room.columnWidth
                visible: !room.first
                tablet: room.tablet
                onDone: room.done()
            }
        }
    }
}
