// Time left to each limit that is reckoned: a figure, its band in words, and a bar of fifteen years.
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
            required property real share
            required property bool soon
            required property bool stale
            readonly property color ink: row.soon ? Tokens.rust : Tokens.ink2

            width: times.width
            height: words.height + Tokens.gap * 2
            Accessible.role: Accessible.StaticText
            Accessible.name: row.figure === "" ? qsTr("%1: %2").arg(row.name).arg(row.band) : qsTr("%1: %2, 8 in 10 %3").arg(row.name).arg(row.figure).arg(row.band)

            Rectangle {
                width: parent.width
                height: Tokens.ruleStroke
                color: Tokens.line
            }

            Item {
                id: words

                y: Tokens.gap
                width: parent.width
                height: Math.max(name.height + Tokens.smallGap * 2 + bar.height, figure.height + band.height)

                InkText {
                    id: name

                    width: parent.width - figure.width - Tokens.gap
                    text: row.name
                    bold: row.soon
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
                    visible: row.figure !== ""
                    width: Tokens.timeBarWidth
                    height: Tokens.timeBarHeight
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
                    id: band

                    objectName: "timeBand" + row.index
                    anchors.right: parent.right
                    y: row.figure === "" ? name.height : figure.height
                    width: row.figure === "" ? parent.width : parent.width - bar.width - Tokens.gap
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
