// Where the part is: a piece of its run, to be touched. Another part of it is another forecast.
import QtQuick
import Kneerail.Ui

Rectangle {
    id: place

    required property ForecastModel forecast

    color: Tokens.paper
    border.color: Tokens.edge
    border.width: Tokens.ruleStroke

    ElevationView {
        objectName: "partPlace"
        anchors.fill: parent
        anchors.margins: Tokens.ruleStroke
        clip: true
        visible: place.forecast.partName !== ""
        picture: place.forecast.run
        deckMargin: Tokens.pageMargin + Tokens.smallGap
        scaleDenominator: Tokens.placeScale
        saysScale: false
        tagged: false
        onPartTouched: part => place.forecast.choosePart(part)
        onSwiped: step => place.forecast.nextPost(step)
    }
}
