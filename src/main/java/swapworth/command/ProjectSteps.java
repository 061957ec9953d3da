package swapworth.command;

class ProjectSteps {
    ProjectSteps(Steps s, java.io.PrintStream o, java.io.PrintStream e) {
    }

    int project(Arguments a) {
        return 0;
    }
}
