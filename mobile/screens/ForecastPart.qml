// Forecast of one part: its readings, path and limits, the reason in sentences, and the time left to each limit.
import QtQuick
import Kneerail.Ui

Room {
    id: room

    required property ForecastModel forecast
    readonly property real sideWidth: portrait ? width : Tokens.padWidth - Tokens.pageMargin
    readonly property real overKeys: height - keys.height - Tokens.margin * 2  // where the side stands upright
    readonly property real sideHeight: portrait ? Math.max(times.implicitHeight, keys.implicitHeight + Tokens.placeHeight + Tokens.margin) + Tokens.margin * 2 : height

    whereLine: forecast.partName === "" ? "" : qsTr("%1 · %2").arg(forecast.siteName).arg(forecast.runName)
    keptLine: forecast.reckonedOn === "" ? "" : qsTr("Reckoned %1").arg(forecast.reckonedOn)
    cells: ForecastCells {
        forecast: room.forecast
        portrait: room.portrait
        lined: room.lined
    }
    Keys.onLeftPressed: forecast.nextPost(-1)
    Keys.onRightPressed: forecast.nextPost(1)
    Keys.onReturnPressed: forecast.walkHere()

    Rectangle {
        anchors.fill: parent
        color: Tokens.paper
    }

    TrendSheet {
        x: room.portrait || !Tokens.leftHanded ? 0 : room.sideWidth
        width: room.portrait ? room.width : room.width - room.sideWidth
        height: story.y
        forecast: room.forecast
    }

    PartStory {
        id: story

        x: room.portrait || !Tokens.leftHanded ? 0 : room.sideWidth
        y: (room.portrait ? side.y : room.height) - height
        width: room.portrait ? room.width : room.width - room.sideWidth
        most: (room.portrait ? side.y : room.height) / 2
        forecast: room.forecast
    }

    Rectangle {
        id: side

        x: room.portrait || Tokens.leftHanded ? 0 : room.width - width
        y: room.portrait ? room.height - height : 0
        width: room.sideWidth
        height: room.sideHeight
        color: Tokens.shade

        Rectangle {
            width: room.portrait ? parent.width : Tokens.keyEdge
            height: room.portrait ? Tokens.keyEdge : parent.height
            color: Tokens.edge
        }

        PartPlace {
            id: place

            x: Tokens.margin
            y: Tokens.margin
            width: room.portrait ? parent.width / 2 - Tokens.margin * 1.5 : parent.width - Tokens.margin * 2
            height: room.portrait ? Tokens.placeHeight : Math.max(Tokens.placeHeight / 2, Math.min(Tokens.placeHeight, room.overKeys - Tokens.margin * 2 - times.implicitHeight))
            forecast: room.forecast
        }

        // All limits are seen at once; with large letters on a small glass they are pushed up to the last.
        Flickable {
            x: (room.portrait ? parent.width / 2 + Tokens.margin / 2 : Tokens.margin) - Tokens.margin
            y: room.portrait ? Tokens.margin : place.y + place.height + Tokens.margin
            width: place.width + Tokens.margin
            height: room.portrait ? times.implicitHeight : Math.min(times.implicitHeight, room.overKeys - y)
            contentHeight: times.implicitHeight
            boundsBehavior: Flickable.StopAtBounds
            interactive: contentHeight > height
            clip: interactive

            TimeLeft {
                id: times

                x: Tokens.margin
                width: place.width
                forecast: room.forecast
            }
        }

        ForecastKeys {
            id: keys

            x: Tokens.margin
            y: room.portrait ? place.y + place.height + Tokens.margin : parent.height - height - Tokens.margin
            width: place.width
            forecast: room.forecast
        }
    }
}
