// Time left to each limit that is reckoned: a figure, its band in words, and a bar of fifteen years; a chance has no bar. The limit that comes first is marked.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Column {
    id: times

    required property ForecastModel forecast

    InkText {
        width: parent.width
        text: times.forecast.reckonedOn === "" ? qsTr("Time left") : qsTr("Time left, from %1").arg(times.forecast.reckonedOn)
        bold: true
        font.pixelSize: Tokens.labelText
        wrapMode: Text.Wrap
        bottomPadding: Tokens.gap
    }

    Repeater {
        model: times.forecast.timeLeft

        Item {
            id: row

            required property int index
            required property string name
            required property string figure
            required property string band
            required property string spoken
            required property string mark
            required property bool first
            required property bool timed
            required property real share
            required property bool soon
            required property bool stale
            readonly property color ink: row.soon ? Tokens.rust : Tokens.ink2

            width: times.width
            height: words.height + Tokens.gap * 2
            Accessible.role: Accessible.StaticText
            Accessible.name: row.spoken

            Rectangle {
                width: parent.width
                height: Tokens.ruleStroke
                color: Tokens.line
            }

            Rectangle {
                objectName: "timeMark" + row.index
                visible: row.mark !== ""
                x: -width - Tokens.smallGap
                y: Tokens.gap
                width: row.first ? Tokens.keyFoot : Tokens.ruleStroke
                height: words.height
                color: Tokens.chalk
            }

            Item {
                id: words

                y: Tokens.gap
                width: parent.width
                height: Math.max(mark.y + mark.height, band.y + band.height)

                InkText {
                    id: name

                    width: parent.width - figure.width - Tokens.gap
                    text: row.name
                    bold: row.soon || row.first
                    wrapMode: Text.Wrap
                }

                InkText {
                    id: figure

                    anchors.right: parent.right
                    text: row.figure
                    bold: true
                    font.pixelSize: Tokens.labelText
                }

                Rectangle {
                    id: bar

                    objectName: "timeBar" + row.index
                    y: name.height + Tokens.smallGap * 2
                    visible: row.timed
                    width: Tokens.timeBarWidth
                    height: row.timed ? Tokens.timeBarHeight : 0
                    color: Tokens.sheet
                    border.color: Tokens.line
                    border.width: Tokens.hairStroke

                    Rectangle {
                        objectName: "timeFill" + row.index
                        width: parent.width * row.share
                        height: parent.height
                        color: row.stale ? Tokens.sheet : row.ink
                        border.color: row.ink
                        border.width: Tokens.ruleStroke
                    }
                }

                InkText {
                    id: mark

                    objectName: "timeWords" + row.index
                    y: row.timed ? bar.y + bar.height + Tokens.smallGap : name.height
                    height: row.mark === "" ? 0 : implicitHeight
                    visible: row.mark !== ""
                    text: row.mark
                    color: Tokens.chalk
                    font.pixelSize: Tokens.smallText
                }

                InkText {
                    id: band

                    readonly property real beside: row.timed ? bar.width + Tokens.gap : row.mark !== "" ? mark.width + Tokens.gap : 0

                    objectName: "timeBand" + row.index
                    anchors.right: parent.right
                    y: row.figure === "" ? Math.max(name.height, mark.y + mark.height) : Math.max(figure.height, row.timed ? 0 : name.height)
                    width: row.figure === "" ? parent.width : parent.width - beside
                    text: row.band
                    color: Tokens.ink2
                    font.pixelSize: Tokens.smallText
                    horizontalAlignment: row.figure === "" ? Text.AlignLeft : Text.AlignRight
                    wrapMode: Text.Wrap
                }
            }
        }
    }
}
