// One finding as a tag hung on the rail: what and how bad, where on the rail, its photograph with the ring, what was done and what is next.
import QtQuick
import Kneerail.Ui

TouchItem {
    id: tag

    required property int index
    required property string number
    required property string part
    required property string kind
    required property int grade
    required property bool boarded
    required property RunPicture picture
    required property url preview
    required property string marks
    required property string done
    required property string next
    required property string tells
    property real hangs: 0
    readonly property real pictures: (height - hangs - Tokens.margin - head.height - words.height - Tokens.inset) / 2

    objectName: "finding" + index
    width: Tokens.findingTagWidth
    activeFocusOnTab: true
    Accessible.role: Accessible.Button
    Accessible.name: tells
    Accessible.onPressAction: tag.accessiblePressAction()

    Octagon {
        y: tag.hangs
        width: parent.width
        height: parent.height - tag.hangs
        cutBelow: false
        cut: Tokens.findingTagCut
        fill: tag.pressed ? Tokens.chalkLight : Tokens.sheet
        edge: Tokens.edge
        edgeWidth: Tokens.keyEdge
        focusRing: tag.visualFocus
    }

    RailHook {
        anchors.horizontalCenter: parent.horizontalCenter
        width: Tokens.tagHook
        height: tag.hangs + Tokens.tagCut * 1.5
        wire: Tokens.edge
        hole: Tokens.sheet
        holeRadius: Tokens.tagHole * 1.7
        stroke: Tokens.keyEdge
    }

    Column {
        id: head

        x: Tokens.margin
        y: tag.hangs + Tokens.margin
        width: parent.width - Tokens.margin * 2

        InkText {
            width: parent.width
            text: tag.number
            bold: true
            font.pixelSize: Tokens.gradeText
        }

        InkText {
            width: parent.width
            text: tag.part
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            text: tag.kind
            color: Tokens.ink2
            elide: Text.ElideRight
        }

        Item {
            width: parent.width
            height: Tokens.inset
        }
    }

    GradeGlyph {
        anchors.right: parent.right
        anchors.rightMargin: Tokens.margin
        y: tag.hangs + Tokens.margin
        radius: Tokens.glyphInList * 0.85
        width: radius * 2.4
        height: width
        grade: tag.grade
        ground: false
    }

    Rectangle {
        id: place

        x: Tokens.keyEdge
        y: tag.hangs + Tokens.margin + head.height
        width: parent.width - Tokens.keyEdge * 2
        height: tag.pictures
        color: Tokens.paper
        border.color: Tokens.line
        border.width: Tokens.ruleStroke

        ElevationView {
            anchors.fill: parent
            anchors.margins: Tokens.ruleStroke
            clip: true
            enabled: false
            picture: tag.picture
            deckMargin: Tokens.margin
            scaleDenominator: Tokens.tagScale * 1.25  // the whole height of a rail, and what is written above it
            saysScale: false
            tagged: false
        }
    }

    Item {
        id: print

        x: Tokens.keyEdge
        y: place.y + place.height
        width: parent.width - Tokens.keyEdge * 2
        height: tag.pictures
        clip: true

        Image {
            id: image

            anchors.fill: parent
            source: tag.preview
            fillMode: Image.PreserveAspectCrop
            asynchronous: true
        }

        PictureMarks {
            visible: image.paintedWidth > 0
            x: (image.width - width) / 2
            y: (image.height - height) / 2
            width: image.paintedWidth
            height: image.paintedHeight
            marks: tag.marks
            stroke: Tokens.ringOnPicture / 2
        }

        InkText {
            visible: String(tag.preview) === "" || image.status === Image.Error
            anchors.centerIn: parent
            text: qsTr("no photograph")
            color: Tokens.ink2
        }
    }

    Rectangle {
        y: print.y + print.height
        x: Tokens.keyEdge
        width: parent.width - Tokens.keyEdge * 2
        height: Tokens.ruleStroke
        color: Tokens.line
    }

    Column {
        id: words

        anchors.bottom: parent.bottom
        x: Tokens.margin
        width: parent.width - Tokens.margin * 2
        spacing: Tokens.smallGap

        InkText {
            width: parent.width
            text: tag.done
            bold: true
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }

        InkText {
            width: parent.width
            height: font.pixelSize * 2.5
            text: tag.next
            color: Tokens.ink2
            font.pixelSize: Tokens.smallText
            wrapMode: Text.Wrap
            maximumLineCount: 2
            elide: Text.ElideRight
        }

        FindingSign {
            x: -Tokens.margin + Tokens.keyEdge
            width: tag.width - Tokens.keyEdge * 2
            height: Tokens.barrierHeight
            opacity: tag.boarded ? 1 : 0
            kind: FindingSign.Board
            ink: Tokens.edge
            tape: Tokens.tape
            tapeInk: Tokens.tapeInk
        }

        Item {
            width: parent.width
            height: Tokens.keyEdge
        }
    }
}
