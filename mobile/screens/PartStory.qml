// Under the drawing: what the part loses, what that rests on, and what no projection is good for.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: story

    required property ForecastModel forecast

    /// As high as it may become; then what is longer is pushed up.
    property real most: words.implicitHeight + Tokens.margin * 2

    implicitHeight: Math.max(Tokens.storyHeight, Math.min(most, words.implicitHeight + Tokens.margin * 2))
    color: Tokens.shade
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1 %2").arg(headline.text).arg(reason.text)

    Rectangle {
        width: parent.width
        height: Tokens.keyEdge
        color: Tokens.edge
    }

    Flickable {
        y: Tokens.margin
        width: parent.width
        height: parent.height - y - Tokens.keyEdge
        contentHeight: words.implicitHeight + Tokens.margin
        boundsBehavior: Flickable.StopAtBounds
        interactive: words.implicitHeight + Tokens.margin * 2 > story.height
        clip: interactive

        Column {
            id: words

            x: Tokens.pageMargin
            width: parent.width - Tokens.pageMargin * 2
            spacing: Tokens.smallGap

            InkText {
                id: headline

                width: parent.width
                text: story.forecast.headline !== "" ? story.forecast.headline : qsTr("Nothing is drawn.")
                bold: true
                font.pixelSize: Tokens.labelText
                wrapMode: Text.Wrap
            }

            InkText {
                id: reason

                width: parent.width
                text: (story.forecast.reason !== "" ? story.forecast.reason : story.forecast.message) + qsTr(" Never wait for a projection to close off a rail that moves.")
                color: Tokens.ink2
                wrapMode: Text.Wrap
            }
        }
    }
}
