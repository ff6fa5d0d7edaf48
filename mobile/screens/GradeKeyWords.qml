// What stands on a key that gives a grade.
import QtQuick
import Kneerail.Ui

Item {
    id: words

    property int grade: 1
    property string word
    property string test
    property string mark

    implicitHeight: Tokens.glyphOnKey * 2 + Tokens.gap

    GradeGlyph {
        id: glyph

        x: Tokens.inset
        anchors.verticalCenter: parent.verticalCenter
        radius: Math.min(Tokens.glyphOnKey, parent.height / 2 - Tokens.smallGap)
        grade: words.grade
        ground: false
    }

    Column {
        anchors.left: glyph.right
        anchors.leftMargin: Tokens.margin
        anchors.right: parent.right
        anchors.rightMargin: Tokens.gap
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.textScale > 1 ? 0 : Tokens.smallGap

        Row {
            spacing: Tokens.inset

            InkText {
                id: number

                text: words.grade
                bold: true
                font.pixelSize: Tokens.gradeText
            }

            InkText {
                anchors.baseline: number.baseline
                text: words.word
                bold: true
                font.pixelSize: Tokens.keyText
            }
        }

        InkText {
            width: parent.width
            text: words.test
            color: Tokens.ink2
            fontSizeMode: Text.HorizontalFit
            minimumPixelSize: Math.round(font.pixelSize * 0.6)
            elide: Text.ElideRight
        }
    }

    InkText {
        anchors.right: parent.right
        anchors.rightMargin: Tokens.inset
        anchors.top: parent.top
        anchors.topMargin: Tokens.inset
        text: words.mark
        color: Tokens.ink2
        font.pixelSize: Tokens.captionText
    }
}
