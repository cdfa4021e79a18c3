package traytally.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.lang.reflect.Method;
import java.util.Arrays;

/** Runs a main class in this Java machine, then prints what the whole process cost. */
public final class OwnCost {
  private OwnCost() {}

  /** The main class, then what it is given. */
  public static void main(String[] args) throws Exception {
    Thread last = new Thread(OwnCost::print);
    Runtime.getRuntime().addShutdownHook(last);
    Method main = Class.forName(args[0]).getDeclaredMethod("main", String[].class);
    main.setAccessible(true);
    main.invoke(null, (Object) Arrays.copyOfRange(args, 1, args.length));
  }

  private static void print() {
    var system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    long wall = System.currentTimeMillis() - ManagementFactory.getRuntimeMXBean().getStartTime();
    System.out.printf("cost cpu %d ms wall %d ms%n", system.getProcessCpuTime() / 1_000_000, wall);
  }
}
