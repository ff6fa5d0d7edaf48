// The keys of the pad that is up for the chosen part.
pragma ComponentBehavior: Bound

import QtQuick
import Kneerail.Ui

Item {
    id: keys

    required property WalkModel walk

    MadeOnce {
        shown: keys.walk.pad === WalkModel.GradePad

        GradeKeys {
            anchors.fill: parent
            words: keys.walk.gradeNames
            tests: keys.walk.gradeTests
            now: keys.walk.gradeNow
            last: keys.walk.lastGrade
            onGraded: grade => keys.walk.chooseGrade(grade)
        }
    }

    MadeOnce {
        shown: keys.walk.pad === WalkModel.CoatingPad

        CoatingKeys {
            anchors.fill: parent
            onDigit: digit => keys.walk.coating.digit(digit)
            onNextSlot: keys.walk.coating.nextSlot()
            onErase: keys.walk.coating.backspace()
        }
    }

    MadeOnce {
        shown: keys.walk.pad === WalkModel.WallPad

        WallKeys {
            anchors.fill: parent
            wall: keys.walk.wall
        }
    }

    MadeOnce {
        shown: keys.walk.pad === WalkModel.TorquePad

        TorqueKeys {
            anchors.fill: parent
            screw: keys.walk.torque.title
            lastTime: keys.walk.torque.doneWords !== "" ? keys.walk.torque.doneWords : keys.walk.torque.lastWords
            clicked: keys.walk.torque.clickedWords
            clickedMeans: keys.walk.torque.clickedSecond
            movedMeans: keys.walk.torque.movedSecond
            target: keys.walk.torque.target
            lowest: keys.walk.torque.lowest
            hasTarget: keys.walk.torque.target > 0
            moved: keys.walk.torque.moving
            value: keys.walk.torque.movedAbout
            wrenchQuestion: keys.walk.torque.wrenchAsked ? keys.walk.torque.wrenchQuestion : ""
            onWrenchSet: keys.walk.torque.wrenchIsSet()
            onHeld: keys.walk.torque.clicked()
            onItMoved: keys.walk.torque.moved()
            onMovedAt: value => keys.walk.torque.movedAt(value)
            onSeized: keys.walk.torque.seized()
            onNoScrew: keys.walk.torque.noScrew()
        }
    }
}
