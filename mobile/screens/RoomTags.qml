// The rooms' tags on the top rail; the one of the room that is shown is marked.
import QtQuick
import Kneerail.Ui

Row {
    id: tags

    required property int place

    signal chosen(place: int)

    spacing: Tokens.gap

    RailTag {
        objectName: "sitesTag"
        text: qsTr("Sites")
        here: tags.place === Place.Sites || tags.place === Place.Prepare
        onClicked: tags.chosen(Place.Sites)
    }

    RailTag {
        objectName: "walkTag"
        text: qsTr("Walk")
        here: tags.place === Place.Walk
        onClicked: tags.chosen(Place.Walk)
    }

    RailTag {
        objectName: "findingsTag"
        text: qsTr("Findings")
        here: tags.place === Place.Findings
        onClicked: tags.chosen(Place.Findings)
    }

    RailTag {
        objectName: "forecastTag"
        text: qsTr("Forecast")
        here: tags.place === Place.Forecast
        onClicked: tags.chosen(Place.Forecast)
    }
}
