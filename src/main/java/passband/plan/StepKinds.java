package passband.plan;

import passband.plan.PlanStep.Kind;

/** The kind of each act. */
enum StepKinds implements Act.Visitor<Kind> {
  INSTANCE;

  @Override
  public Kind select(Act.Select select) {
    return Kind.SELECT;
  }

  @Override
  public Kind adjust(Act.Adjust adjust) {
    return Kind.ADJUST;
  }

  @Override
  public Kind set(Act.Set set) {
    return Kind.SET;
  }

  @Override
  public Kind setLoad(Act.SetLoad setLoad) {
    return Kind.SET_LOAD;
  }

  @Override
  public Kind free(Act.Free free) {
    return Kind.DO;
  }

  @Override
  public Kind run(Act.Run run) {
    return run.kind();
  }

  @Override
  public Kind activate(Act.Activate activate) {
    return Kind.ACTIVATE;
  }

  @Override
  public Kind shown(Act.Shown shown) {
    return Kind.SHOWN;
  }

  @Override
  public Kind read(Act.Read read) {
    return Kind.READ;
  }

  @Override
  public Kind perform(Act.Perform perform) {
    return Kind.PERFORM;
  }

  @Override
  public Kind pause(Act.Wait wait) {
    return Kind.WAIT;
  }

  @Override
  public Kind rest(Act.Rest rest) {
    return Kind.REST;
  }

  @Override
  public Kind confirm(Act.Confirm confirm) {
    return Kind.CONFIRM;
  }

  @Override
  public Kind noted(Act.Noted noted) {
    return Kind.RECORD;
  }

  @Override
  public Kind caution(Act.Caution caution) {
    return Kind.CAUTION;
  }

  @Override
  public Kind choose(Act.Choose choose) {
    return Kind.CHOOSE;
  }

  @Override
  public Kind ready(Act.Ready ready) {
    return Kind.READY;
  }

  @Override
  public Kind stays(Act.Stays stays) {
    return Kind.STAYS;
  }
}
